package charline.model.classical;

import charline.stat.distribution.StandardNormal;
import charline.stat.linear.Term;

/**
 * One coefficient of a fit.
 *
 * @param name the column with its scale, "ln dose (J/cm2)"
 * @param estimate change per unit of the column of the log odds, or, where passes are timed, of ln
 *     passes
 * @param standardError of it
 * @param limits two-sided
 */
public record Coefficient(String name, double estimate, double standardError, Limits limits) {
  /** With Wald's limits at {@link ClassicalRegression#LIMITS}. */
  static Coefficient wald(Term term) {
    double reach = normalQuantile(ClassicalRegression.LIMITS) * term.standardError();
    return new Coefficient(
        Columns.plainIntercept(term.name()),
        term.estimate(),
        term.standardError(),
        Limits.between(term.estimate() - reach, term.estimate() + reach));
  }

  /** How many standard errors a two-sided confidence reaches either way. */
  static double normalQuantile(double twoSided) {
    return StandardNormal.reachOfMiddle(twoSided);
  }
}
