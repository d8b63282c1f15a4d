package charline.wording;

import charline.drift.Validity;
import charline.window.Recommendation;

/** A verdict in a word or two. */
public final class VerdictText {
  private VerdictText() {}

  /** "not yet", "window", or "window, provisional". */
  public static String of(Recommendation found) {
    return found.verdict().word()
        + found.standing().map(standing -> ", " + standing.word()).orElse("");
  }

  /** The same in a list: a window that is not valid any more has no standing. */
  public static String of(Recommendation found, Validity validity) {
    return validity.drifted().isPresent() ? found.verdict().word() : of(found);
  }
}
