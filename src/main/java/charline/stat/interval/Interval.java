package charline.stat.interval;

/**
 * A confidence interval, either end of which may be unbounded.
 *
 * @param lower the lower end
 * @param upper the upper end
 * @param confidence two-sided, between 0 and 1; each end alone is a one-sided bound of confidence
 *     {@code (1 + confidence) / 2}
 */
public record Interval(Bound lower, Bound upper, double confidence) {
  public Interval {
    requireConfidence(confidence);
  }

  /** An interval with two finite ends. */
  public static Interval of(double lower, double upper, double confidence) {
    return new Interval(Bound.at(lower), Bound.at(upper), confidence);
  }

  /**
   * Returns the confidence if it lies strictly between 0 and 1.
   *
   * @throws IllegalArgumentException "Confidence must lie between 0 and 1, not 95.0; write 0.95 for
   *     95 %."
   */
  public static double requireConfidence(double confidence) {
    if (!(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException(
          "Confidence must lie between 0 and 1, not " + confidence + "; write 0.95 for 95 %.");
    }
    return confidence;
  }
}
