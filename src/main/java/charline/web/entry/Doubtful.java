package charline.web.entry;

import charline.trial.Plausibility.Doubt;
import java.util.List;
import java.util.stream.Collectors;

/** An entry with values far from what is usual: kept only if the person says that they are sure. */
public final class Doubtful extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private Doubtful(String sentences) {
    super(sentences);
  }

  static void require(boolean sure, List<Doubt> doubts) {
    if (!sure && !doubts.isEmpty()) {
      throw new Doubtful(doubts.stream().map(Doubt::sentence).collect(Collectors.joining(" ")));
    }
  }
}
