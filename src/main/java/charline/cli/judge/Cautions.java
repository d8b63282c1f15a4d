package charline.cli.judge;

import charline.log.Logbook;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.window.Recommendation;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Cautions that go with an answer. */
final class Cautions {
  private Cautions() {}

  /** Those of every finish, board and kind of light behind the answer, most serious first. */
  static List<Caution> of(Logbook log, Recommendation found) {
    Set<Caution> all = new LinkedHashSet<>();
    for (Patch patch : found.patches()) {
      all.addAll(log.cautions(patch.finish(), patch.board(), patch.rig().emission()));
    }
    return List.copyOf(all);
  }
}
