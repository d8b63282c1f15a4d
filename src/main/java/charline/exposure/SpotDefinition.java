package charline.exposure;

import charline.refusal.Refusal;

/**
 * What a quoted spot diameter means. The same beam has a different number under each definition, so
 * a diameter is never stored without one. Conversions hold for a Gaussian beam.
 */
public enum SpotDefinition {
  /** Where the irradiance has fallen to 1/e² of its centre. */
  ONE_OVER_E_SQUARED("1/e2", 1),
  /** Four standard deviations of the irradiance (ISO 11146-1); equals 1/e² for a Gaussian. */
  D4_SIGMA("D4sigma", 1),
  /** Where the irradiance has fallen to 1/e, the diameter of laser-safety documents. */
  ONE_OVER_E("1/e", Math.sqrt(2)),
  /** Full width at half maximum: 0.588705 of the 1/e² diameter. */
  FULL_WIDTH_HALF_MAXIMUM("FWHM", 1 / Math.sqrt(Math.log(2) / 2));

  private final String word;
  private final double toOneOverESquared;

  SpotDefinition(String word, double toOneOverESquared) {
    this.word = word;
    this.toOneOverESquared = toOneOverESquared;
  }

  /** The word used in logs and on the command line: {@code 1/e2}, {@code D4sigma}, ... */
  public String word() {
    return word;
  }

  /** Factor from a diameter of this definition to the 1/e² diameter of the same beam. */
  public double toOneOverESquared() {
    return toOneOverESquared;
  }

  /**
   * The definition a word names.
   *
   * @throws Refusal if it names none
   */
  public static SpotDefinition ofWord(String word) {
    for (SpotDefinition d : values()) {
      if (d.word.equalsIgnoreCase(word.strip())) {
        return d;
      }
    }
    throw Refusal.usage(
        "Spot definition must be 1/e2, D4sigma, 1/e or FWHM, not \"" + word + "\".");
  }
}
