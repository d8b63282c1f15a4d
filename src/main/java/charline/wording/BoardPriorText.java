package charline.wording;

import static charline.quantity.Figures.three;

import charline.answer.BoardPriors;
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
            source(boards.charring()),
            charring.equals(clearing)
                ? charring
                : charring + " for char, " + clearing + " for clearing");
  }

  /** Of one model. */
  static String of(SpreadPrior boards) {
    return "Boards: %s. Before these patches, one board in three is expected off the average by more than a factor of %s."
        .formatted(source(boards), factor(boards));
  }

  private static String source(SpreadPrior boards) {
    if (boards instanceof LearnedSpread learned) {
      return learned.strata() == 0
          ? "no other stratum of this log has patches on two boards yet, so a cautious start"
          : "learned from %s of this log"
              .formatted(Figures.count(learned.strata(), "other stratum", "other strata"));
    }
    return "as the file of priors says; nothing is learned from the log";
  }

  private static String factor(SpreadPrior boards) {
    return "%s (%s)"
        .formatted(
            three(Math.exp(boards.quantile(0.5))),
            Figures.bounds(Math.exp(boards.quantile(LOW)), Math.exp(boards.quantile(HIGH))));
  }

  /** Where it comes from, from how many strata, and what omega may be, in ln dose. */
  static Json json(SpreadPrior boards) {
    boolean learns = boards instanceof LearnedSpread;
    int strata = boards instanceof LearnedSpread learned ? learned.strata() : 0;
    return new Json()
        .put("source", !learns ? "file" : strata == 0 ? "cautious start" : "log")
        .put("strata", strata)
        .put("median", boards.quantile(0.5))
        .atLeast("low", boards.quantile(LOW))
        .atMost("high", boards.quantile(HIGH));
  }
}
