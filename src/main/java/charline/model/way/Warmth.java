package charline.model.way;

import charline.trial.Conditions;
import java.util.Optional;

/** Whether the wood was still hot from the pass before. */
public enum Warmth {
  /** The next pass came within {@link #COOLED_AFTER_SECONDS}. */
  HOT,
  /** The wood had that long to cool, or longer. */
  COOLED;

  /**
   * Heat left near the surface falls with the square root of time: after ten seconds a third of
   * what was there after one is left.
   */
  public static final double COOLED_AFTER_SECONDS = 10;

  public String word() {
    return this == HOT ? "hot" : "cooled";
  }

  /** By the rest between two passes; empty where it was not noted. */
  static Optional<Warmth> of(Conditions conditions) {
    return conditions.restSeconds().isPresent()
        ? Optional.of(after(conditions.restSeconds().getAsDouble()))
        : Optional.empty();
  }

  /** After a rest of so many seconds. */
  public static Warmth after(double restSeconds) {
    return restSeconds < COOLED_AFTER_SECONDS ? HOT : COOLED;
  }
}
