package charline.answer;

import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Verdict;
import java.util.Optional;

/**
 * How much an answer owes to the priors: the same question with all their spreads doubled.
 *
 * @param priors that the answer starts from
 * @param found the answer
 * @param halfAsSure the answer with every spread doubled
 */
public record PriorSensitivity(Priors priors, Recommendation found, HalfAsSure halfAsSure) {
  /**
   * What is left of an answer when the priors say half as much. What was found when the models were
   * checked is taken to hold for both.
   *
   * @param start the start setting, where there is a window
   */
  public record HalfAsSure(Verdict verdict, Optional<Forecast> start) {
    static HalfAsSure of(Recommendation found) {
      return new HalfAsSure(found.verdict(), found.chosen().map(box -> box.start()));
    }
  }
}
