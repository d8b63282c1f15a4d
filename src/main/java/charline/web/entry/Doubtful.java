package charline.web.entry;

import charline.record.Assurance;
import charline.trial.Plausibility.Doubt;
import java.util.List;
import java.util.stream.Collectors;

/** An entry with values far from what is usual: kept only if the person says that they are sure. */
public final class Doubtful extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private Doubtful(List<Doubt> doubts) {
    super(doubts.stream().map(Doubt::sentence).collect(Collectors.joining(" ")));
  }

  /** What a form says of the person being sure. */
  static Assurance unless(boolean sure) {
    return doubts -> {
      if (!sure && !doubts.isEmpty()) {
        throw new Doubtful(doubts);
      }
    };
  }
}
