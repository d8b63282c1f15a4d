package charline.wording;

import static charline.quantity.Figures.three;

import charline.answer.BoardPriors;
import charline.model.Event;
import charline.model.LearnedSpread;
import charline.model.SpreadPrior;
import charline.quantity.Figures;

/** Where the expected spread between boards comes from, and how large it is. */
public final class BoardPriorText {
  private static final double LOW = 0.05;
  private static final double HIGH = 0.95;

  private BoardPriorText() {}

  /** Of both models, in a sentence. */
  public static String of(BoardPriors boards) {
    String charring = factor(boards.charring());
    String clearing = factor(boards.clearing());
    return "Boards: %s. Before these patches, one board in three is expected off the average by more than a factor of %s."
        .formatted(
            source(boards, Event.CHAR),
            charring.equals(clearing)
                ? charring
                : charring + " for char, " + clearing + " for clearing");
  }

  /** Of one model. */
  static String of(BoardPriors boards, Event event) {
    return "Boards: %s. Before these patches, one board in three is expected off the average by more than a factor of %s."
        .formatted(source(boards, event), factor(boards.of(event)));
  }

  private static String source(BoardPriors boards, Event event) {
    if (boards.pinned()) {
      return "as the file of priors says; nothing is learned from the log";
    }
    int strata = strata(boards.of(event));
    return strata == 0
        ? "no other stratum of this log has patches on two boards yet, so a cautious start"
        : "learned from %s of this log"
            .formatted(Figures.count(strata, "other stratum", "other strata"));
  }

  private static int strata(SpreadPrior boards) {
    return boards instanceof LearnedSpread learned ? learned.strata() : 0;
  }

  private static String factor(SpreadPrior boards) {
    return "%s (%s)"
        .formatted(
            three(Math.exp(boards.quantile(0.5))),
            Figures.bounds(Math.exp(boards.quantile(LOW)), Math.exp(boards.quantile(HIGH))));
  }

  /** Where it comes from, from how many strata, and what omega may be, in ln dose. */
  static Json json(BoardPriors boards, Event event) {
    SpreadPrior own = boards.of(event);
    int strata = boards.pinned() ? 0 : strata(own);
    return new Json()
        .put("source", boards.pinned() ? "file" : strata == 0 ? "cautious start" : "log")
        .put("strata", strata)
        .put("median", own.quantile(0.5))
        .atLeast("low", own.quantile(LOW))
        .atMost("high", own.quantile(HIGH));
  }
}
