package charline.model;

import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * The patches of one stratum, as the models take them.
 *
 * @param stratum what they have in common
 * @param patches one or more
 * @param acceptTint count a tint in the grain as cleared
 */
public record Trials(Stratum stratum, List<Patch> patches, boolean acceptTint) {
  public Trials {
    patches = List.copyOf(patches);
    if (patches.isEmpty()) {
      throw new IllegalArgumentException(
          "An analysis needs at least one patch; there is none for " + stratum.words() + ".");
    }
  }

  /** Plain counts. */
  public Evidence evidence() {
    return new Evidence(
        patches.size(),
        (int) patches.stream().map(p -> p.board().id()).distinct().count(),
        patches.stream().mapToInt(p -> p.readings().size()).sum(),
        (int) patches.stream().filter(p -> shows(p, Event.CHAR)).count(),
        (int) patches.stream().filter(p -> shows(p, Event.CLEARING)).count());
  }

  /** True if any reading of a patch shows the event. */
  public boolean shows(Patch patch, Event event) {
    return patch.readings().stream().anyMatch(r -> event.shownBy(r.outcome(), acceptTint));
  }

  /** What every patch says of an event, in the order of the patches. */
  public List<CensoredPasses> censored(Event event) {
    Map<UUID, Integer> boards = new LinkedHashMap<>();
    List<CensoredPasses> all = new ArrayList<>();
    for (Patch patch : patches) {
      Board board = patch.board();
      int index = boards.computeIfAbsent(board.id(), id -> boards.size());
      all.add(CensoredPasses.of(patch, index, event, acceptTint));
    }
    return all;
  }

  /** F0: the geometric mean intensity over the patches, as a natural logarithm. */
  public double lnReferenceIntensity() {
    return patches.stream()
        .mapToDouble(p -> Math.log(p.exposure().intensity()))
        .average()
        .orElseThrow();
  }
}
