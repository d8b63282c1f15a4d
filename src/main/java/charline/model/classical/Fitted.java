package charline.model.classical;

import charline.model.Event;
import java.util.List;
import java.util.Optional;

/** What one method made of the rows of a stratum. */
interface Fitted {
  /** Intercept first, with two-sided limits at {@link ClassicalRegression#LIMITS}. */
  List<Coefficient> coefficients();

  /** How the limits of the coefficients were found, within a sentence: "profile" or "Wald". */
  String limitsBy();

  /** Chance of the event by a reading, on a board not seen before. */
  double chance(double[] covariates);

  /**
   * The dose at a chance, at F0 and one pass; empty where dose did not vary or changes nothing.
   *
   * @param twoSided confidence of the limits
   */
  Optional<DoseAnswer> dose(double chance, double twoSided, Event event);

  /** How much boards differ, where the method estimates it. */
  default Optional<BoardSpread> boards() {
    return Optional.empty();
  }

  /** Passes by which shares of patches have had the event, where the method times passes. */
  default List<PassesByShare> passes(double... shares) {
    return List.of();
  }

  /**
   * A try at a fit.
   *
   * @param fitted empty where there is none
   * @param reason why not, one sentence; empty where there is a fit
   */
  record Attempt(Optional<Fitted> fitted, String reason) {
    static Attempt done(Fitted fitted) {
      return new Attempt(Optional.of(fitted), "");
    }

    static Attempt failed(String reason) {
      return new Attempt(Optional.empty(), reason);
    }
  }
}
