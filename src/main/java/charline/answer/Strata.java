package charline.answer;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Patches in the order of burning, sorted into strata once. */
public final class Strata {
  private final List<Patch> patches;
  private final Map<Stratum, List<Patch>> byStratum;

  public Strata(List<Patch> patches) {
    this.patches = List.copyOf(patches);
    Map<Stratum, List<Patch>> sorted = new LinkedHashMap<>();
    this.patches.forEach(
        patch -> sorted.computeIfAbsent(Stratum.of(patch), s -> new ArrayList<>()).add(patch));
    byStratum = Collections.unmodifiableMap(sorted);
  }

  /** All that a log holds now. */
  public static Strata of(Logbook log) {
    return new Strata(log.patches(Filter.ALL).stream().map(PatchEntry::patch).toList());
  }

  /** All patches, in the order of burning. */
  public List<Patch> patches() {
    return patches;
  }

  /** Patches of each stratum, that with the oldest patch first. */
  public Map<Stratum, List<Patch>> byStratum() {
    return byStratum;
  }

  /** Patches of a stratum, which may pool the woods; none where there is no such stratum. */
  public List<Patch> of(Stratum stratum) {
    return stratum.poolsWoods()
        ? patches.stream()
            .filter(p -> stratum.covers(p.board().wood()))
            .filter(p -> Stratum.of(p).over(stratum.wood()).equals(stratum))
            .toList()
        : byStratum.getOrDefault(stratum, List.of());
  }

  /** Patches of one coating family on one wood, or on woods pooled, by kind of light. */
  Map<Stratum, List<Patch>> of(FamilyAndWood about) {
    if (!about.pools()) {
      Map<Stratum, List<Patch>> own = new LinkedHashMap<>(byStratum);
      own.keySet().removeIf(s -> !about.covers(s));
      return own;
    }
    Map<Stratum, List<Patch>> pooled = new LinkedHashMap<>();
    for (Patch patch : patches) {
      Stratum stratum = Stratum.of(patch);
      if (about.covers(stratum)) {
        pooled.computeIfAbsent(stratum.over(about.wood()), s -> new ArrayList<>()).add(patch);
      }
    }
    return pooled;
  }
}
