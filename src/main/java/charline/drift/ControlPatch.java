package charline.drift;

import charline.exposure.Settings;
import charline.model.way.Coating;
import charline.model.way.Way;
import charline.trial.Board;
import charline.trial.Manner;
import charline.trial.Patch;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * The control patch of a rig: one setting in the middle of the trials, burned again every eighth
 * patch, so that a change of the rig can be told from a change of the settings (common practice, no
 * published source).
 */
public final class ControlPatch {
  /** So many patches from one control patch to the next, that one included. */
  public static final int EVERY = 8;

  /** A setting burned so often is taken for the control setting, planned as one or not. */
  static final int REPEATS = 3;

  /**
   * Another coat clears sooner or later by itself, and so may another figure or place: only the
   * same of each is a repeat.
   */
  record Kind(Coating coat, Manner manner) {
    /** What a model of these patches is to answer for. */
    Way way() {
      return Way.UNSAID.with(coat).with(manner.place());
    }

    static Kind of(Patch patch) {
      return new Kind(Coating.of(patch.finish()), patch.manner());
    }
  }

  private record Repeated(Settings settings, Kind kind) {}

  private ControlPatch() {}

  /**
   * The setting that a rig repeated most on one coat in these trials, with one figure on one place,
   * at least three times; of equally common ones the first. Coats are the same where tone and
   * thickness are.
   */
  public static Optional<Settings> setting(List<Patch> patches, Rig rig) {
    return repeated(patches, rig, REPEATS);
  }

  /** The setting to burn again as a control: what was burned twice has begun to be one. */
  public static Optional<Settings> begun(List<Patch> patches, Rig rig) {
    return repeated(patches, rig, 2);
  }

  /**
   * The board that is kept for the control patch: the one that carries most patches with its
   * setting, of equals the first. On another board a change of the rig could not be told from what
   * boards differ by.
   *
   * @param patches trials in the order of burning
   */
  public static Optional<Board> board(List<Patch> patches, Rig rig, Settings control) {
    Map<UUID, Integer> counts = new LinkedHashMap<>();
    Optional<Board> most = Optional.empty();
    int best = 0;
    for (Patch patch : patches) {
      if (patch.rig().id().equals(rig.id()) && patch.settings().equals(control)) {
        counts.merge(patch.board().id(), 1, Integer::sum);
      }
    }
    for (Patch patch : patches) {
      int count = counts.getOrDefault(patch.board().id(), 0);
      if (count > best) {
        best = count;
        most = Optional.of(patch.board());
      }
    }
    return most;
  }

  private static Optional<Settings> repeated(List<Patch> patches, Rig rig, int atLeast) {
    Map<Repeated, Integer> counts = new LinkedHashMap<>();
    patches.stream()
        .filter(p -> p.rig().id().equals(rig.id()))
        .forEach(p -> counts.merge(new Repeated(p.settings(), Kind.of(p)), 1, Integer::sum));
    Optional<Settings> most = Optional.empty();
    int best = atLeast - 1;
    for (Map.Entry<Repeated, Integer> entry : counts.entrySet()) {
      if (entry.getValue() > best) {
        best = entry.getValue();
        most = Optional.of(entry.getKey().settings());
      }
    }
    return most;
  }

  /**
   * How many patches a rig has burned since its latest control patch, on any coat; all of them
   * where there was none. Upkeep since then makes the next one due at once.
   *
   * @param patches trials in the order of burning
   */
  public static int since(List<Patch> patches, Rig rig, Optional<Settings> control) {
    int count = 0;
    Optional<OffsetDateTime> latest = Optional.empty();
    for (Patch patch : patches) {
      if (patch.rig().id().equals(rig.id())) {
        boolean isControl = control.filter(patch.settings()::equals).isPresent();
        count = isControl ? 0 : count + 1;
        latest = isControl ? Optional.of(patch.burnedAt()) : latest;
      }
    }
    return latest.filter(at -> keptUp(rig, at)).isPresent() ? Math.max(count, EVERY) : count;
  }

  private static boolean keptUp(Rig rig, OffsetDateTime since) {
    return rig.upkeep().stream().anyMatch(upkeep -> upkeep.at().isAfter(since));
  }
}
