package charline.model.classical;

import charline.refusal.Refusal;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.Estimator;
import java.util.Arrays;
import java.util.Locale;

/** How the classical fit is made. */
public enum Method {
  /** Maximum likelihood; has no answer where outcomes are separated. */
  ML(Estimator.MAXIMUM_LIKELIHOOD),
  /** Firth's penalised likelihood; always finite. */
  FIRTH(Estimator.FIRTH_PENALISED);

  private final Estimator estimator;

  Method(Estimator estimator) {
    this.estimator = estimator;
  }

  /** {@code ml} or {@code firth}, as typed. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Its name within a sentence. */
  public String words() {
    return estimator.words();
  }

  BinomialRegression regression() {
    return BinomialRegression.withDefaults().with(estimator);
  }

  /**
   * The method a word names.
   *
   * @throws Refusal if it names neither
   */
  public static Method ofWord(String word) {
    return Arrays.stream(values())
        .filter(m -> m.word().equalsIgnoreCase(word.strip()))
        .findFirst()
        .orElseThrow(
            () -> Refusal.usage("the fit must be ml or firth, not \"" + word.strip() + "\"."));
  }
}
