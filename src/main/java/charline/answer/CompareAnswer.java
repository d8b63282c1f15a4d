package charline.answer;

import charline.compare.Contest;
import charline.compare.Side;
import charline.window.Recommendation;

/**
 * Two ways of working held against each other.
 *
 * @param first the one that is compared
 * @param second the one that it is compared with
 * @param contest which of them leaves more room, and how sure that is
 * @param precautions what must be known of the coats before the beam is on
 */
public record CompareAnswer(
    Contender first, Contender second, Contest contest, Precautions precautions) {
  /**
   * One of the two.
   *
   * @param subject what was asked about it
   * @param found its window, or why it has none
   * @param side what it was compared with
   */
  public record Contender(TrialCase subject, Recommendation found, Side side) {}
}
