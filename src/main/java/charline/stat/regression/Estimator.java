package charline.stat.regression;

/** What a fit makes as large as possible. */
public enum Estimator {
  /** The likelihood. It has no maximum where the outcomes are separated. */
  MAXIMUM_LIKELIHOOD("maximum likelihood"),

  /**
   * The likelihood times the root of the determinant of the information, Jeffreys' prior: {@code
   * l*(b) = l(b) + 0.5 log det(X'WX)} (Firth 1993, Biometrika 80:27-38). Always finite, less biased
   * for few rows (Heinze and Schemper 2002, Statistics in Medicine 21:2409-2419).
   */
  FIRTH_PENALISED("Firth's penalised likelihood");

  private final String words;

  Estimator(String words) {
    this.words = words;
  }

  /** Its name within a sentence. */
  public String words() {
    return words;
  }
}
