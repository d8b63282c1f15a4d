package charline.answer;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Patches in the order of burning, sorted into strata once. Those on other places than the face of
 * a board are kept apart: an arris or end grain need not do what the face does.
 */
public final class Strata {
  private final List<Patch> patches;
  private final Predicate<Patch> counts;
  private final List<Patch> leftOut;
  private final Map<Stratum, List<Patch>> byStratum;

  /** Made when they are first asked for. */
  private volatile Strata everywhere;

  private volatile Set<UUID> burned;

  /** Strata of the patches on the face. */
  public Strata(List<Patch> patches) {
    this(List.copyOf(patches), patch -> patch.manner().place() == Place.FACE);
  }

  private Strata(List<Patch> patches, Predicate<Patch> counts) {
    this.patches = patches;
    this.counts = counts;
    leftOut = patches.stream().filter(counts.negate()).toList();
    Map<Stratum, List<Patch>> sorted = new LinkedHashMap<>();
    patches.stream()
        .filter(counts)
        .forEach(
            patch -> sorted.computeIfAbsent(Stratum.of(patch), s -> new ArrayList<>()).add(patch));
    byStratum = Collections.unmodifiableMap(sorted);
  }

  /** The same with the patches on another place counted too. */
  public Strata with(Place place) {
    return place == Place.FACE
        ? this
        : new Strata(patches, counts.or(patch -> patch.manner().place() == place));
  }

  /** The same with the patches on every place. */
  Strata everywhere() {
    if (everywhere == null) {
      everywhere = leftOut.isEmpty() ? this : new Strata(patches, patch -> true);
    }
    return everywhere;
  }

  /** Patches of one coating family on one wood that are not counted, by place. */
  Map<Place, Integer> elsewhere(FamilyAndWood about) {
    Map<Place, Integer> left = new EnumMap<>(Place.class);
    leftOut.stream()
        .filter(patch -> about.covers(Stratum.of(patch)))
        .forEach(patch -> left.merge(patch.manner().place(), 1, Integer::sum));
    return left;
  }

  /** All that a log holds now. */
  public static Strata of(Logbook log) {
    return new Strata(log.patches(Filter.ALL).stream().map(PatchEntry::patch).toList());
  }

  /** All patches, in the order of burning. */
  public List<Patch> patches() {
    return patches;
  }

  /** Boards that carry a patch. */
  Set<UUID> burnedBoards() {
    if (burned == null) {
      burned = patches.stream().map(p -> p.board().id()).collect(Collectors.toUnmodifiableSet());
    }
    return burned;
  }

  /** Patches of each stratum, that with the oldest patch first. */
  public Map<Stratum, List<Patch>> byStratum() {
    return byStratum;
  }

  /** Patches of a stratum, which may pool the woods; none where there is no such stratum. */
  public List<Patch> of(Stratum stratum) {
    return stratum.poolsWoods()
        ? patches.stream()
            .filter(counts)
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
      if (counts.test(patch) && about.covers(stratum)) {
        pooled.computeIfAbsent(stratum.over(about.wood()), s -> new ArrayList<>()).add(patch);
      }
    }
    return pooled;
  }
}
