package charline.wording;

import charline.window.Recommendation;

/** A verdict in a word or two. */
public final class VerdictText {
  private VerdictText() {}

  /** "not yet", "window", or "window, provisional". */
  public static String of(Recommendation found) {
    return found.verdict().word()
        + found.standing().map(standing -> ", " + standing.word()).orElse("");
  }
}
