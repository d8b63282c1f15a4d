package charline.stat.mixed;

import charline.stat.linear.Term;
import java.util.List;

/**
 * A logistic regression with a random intercept per group that has converged.
 *
 * @param terms one per column of the design, with standard errors from the full Hessian (that of
 *     the plain fit where the standard deviation is 0)
 * @param standardDeviation of the intercepts between groups; 0 is a legitimate answer
 * @param logStandardDeviationError standard error of its logarithm; 0 where the deviation is 0
 * @param covariance of the coefficients and, last, the standard deviation, whose row is 0 where it
 *     is 0
 * @param logLikelihood with the binomial coefficients
 * @param groups how many the sample has
 */
public record RandomInterceptFit(
    List<Term> terms,
    double standardDeviation,
    double logStandardDeviationError,
    double[][] covariance,
    double logLikelihood,
    int groups)
    implements RandomInterceptOutcome {
  public RandomInterceptFit {
    terms = List.copyOf(terms);
  }

  /** Whether the groups are no more alike within than between: standard deviation 0. */
  public boolean singular() {
    return standardDeviation == 0;
  }

  /** Akaike's criterion: coefficients and the standard deviation count. */
  public double aic() {
    return 2 * (terms.size() + 1 - logLikelihood);
  }
}
