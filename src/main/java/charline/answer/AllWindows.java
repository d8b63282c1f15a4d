package charline.answer;

import charline.refusal.Refusal;
import charline.trial.Stratum;
import java.util.List;

/**
 * The windows of every stratum.
 *
 * @param answers what was kept of each that can be judged, the one with most patches first
 * @param barred strata that the beam stays off
 * @param skipped strata that cannot, which do not keep the others back
 * @param anyWindow whether one of the answers is a window
 */
public record AllWindows<T>(
    List<T> answers, List<Barred> barred, List<Skipped> skipped, boolean anyWindow) {
  public AllWindows {
    answers = List.copyOf(answers);
    barred = List.copyOf(barred);
    skipped = List.copyOf(skipped);
  }

  /**
   * A stratum that the beam stays off.
   *
   * @param known why
   */
  public record Barred(Stratum stratum, Precautions known) {}

  /**
   * A stratum without an answer.
   *
   * @param reason what is missing
   */
  public record Skipped(Stratum stratum, Refusal reason) {}
}
