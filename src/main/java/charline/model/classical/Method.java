package charline.model.classical;

import charline.refusal.Refusal;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.Estimator;
import java.util.Arrays;
import java.util.Locale;

/** How the classical fit is made. */
public enum Method {
  /** Maximum likelihood; has no answer where outcomes are separated. */
  ML(Estimator.MAXIMUM_LIKELIHOOD.words()) {
    @Override
    Fitted.Attempt fit(PatchRows rows, int leftOut) {
      return LogisticFitted.fit(by(Estimator.MAXIMUM_LIKELIHOOD), rows, leftOut);
    }
  },
  /** Firth's penalised likelihood; always finite. */
  FIRTH(Estimator.FIRTH_PENALISED.words()) {
    @Override
    Fitted.Attempt fit(PatchRows rows, int leftOut) {
      return LogisticFitted.fit(by(Estimator.FIRTH_PENALISED), rows, leftOut);
    }
  },
  /** Maximum likelihood with a random intercept by board; none where outcomes are separated. */
  MIXED("maximum likelihood with a random intercept by board") {
    @Override
    Fitted.Attempt fit(PatchRows rows, int leftOut) {
      return MixedFitted.fit(rows, leftOut);
    }
  },
  /** Log-logistic accelerated failure time on passes, by maximum likelihood. */
  AFT("log-logistic accelerated failure time on passes") {
    @Override
    Fitted.Attempt fit(PatchRows rows, int leftOut) {
      return AcceleratedFitted.fit(rows, leftOut);
    }
  };

  private final String words;

  Method(String words) {
    this.words = words;
  }

  /** {@code ml}, {@code firth}, {@code mixed} or {@code aft}, as typed. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Its name within a sentence. */
  public String words() {
    return words;
  }

  /**
   * Fits the rows of all patches but one.
   *
   * @param leftOut the patch, or {@link PatchRows#NONE}
   * @throws IllegalArgumentException if what is left cannot be solved
   */
  abstract Fitted.Attempt fit(PatchRows rows, int leftOut);

  private static BinomialRegression by(Estimator estimator) {
    return BinomialRegression.withDefaults().with(estimator);
  }

  /**
   * The method a word names.
   *
   * @throws Refusal if it names none of them
   */
  public static Method ofWord(String word) {
    return Arrays.stream(values())
        .filter(m -> m.word().equalsIgnoreCase(word.strip()))
        .findFirst()
        .orElseThrow(
            () ->
                Refusal.usage(
                    "the fit must be ml, firth, mixed or aft, not \"" + word.strip() + "\"."));
  }
}
