package charline.stat.inverse;

import charline.stat.distribution.StandardNormal;
import charline.stat.interval.Bound;
import charline.stat.interval.Interval;
import charline.stat.linear.Term;
import charline.stat.regression.BinomialFit;
import java.util.List;

/**
 * ProfileLikelihood-likelihood limits of coefficients: the values whose likelihood ratio against
 * the estimate stays within the chi-square quantile on 1 degree of freedom (Venzon and Moolgavkar
 * 1988, Applied Statistics 37:87-94). For a penalised fit the ratio is of penalised likelihoods,
 * the penalty that of the full design (Heinze and Schemper 2002, Statistics in Medicine
 * 21:2409-2419).
 *
 * <p>The profile is the global one, over every local maximum that many starts find. Limits are
 * accurate to 1e-7 of themselves.
 *
 * @param confidence two-sided, between 0 and 1
 */
public record ProfileLimits(double confidence) {
  public ProfileLimits {
    Interval.requireConfidence(confidence);
  }

  /** 95 % two-sided. */
  public static ProfileLimits withDefaults() {
    return new ProfileLimits(0.95);
  }

  public ProfileLimits withConfidence(double level) {
    return new ProfileLimits(level);
  }

  /**
   * What the profile says of one coefficient.
   *
   * @param name its column
   * @param interval profile limits
   * @param likelihoodRatio drop of twice the objective when the coefficient is 0
   */
  public record Profiled(String name, Interval interval, double likelihoodRatio) {
    /** Chi-square probability of a larger ratio if the coefficient were 0. */
    public double probability() {
      return StandardNormal.beyond(Math.sqrt(likelihoodRatio));
    }
  }

  /** Every coefficient of a fit, in its order. */
  public List<Profiled> of(BinomialFit fit) {
    return fit.terms().parallelStream().map(term -> of(fit, term.name())).toList();
  }

  /**
   * One coefficient of a fit.
   *
   * @throws IllegalArgumentException if the design has no such column
   */
  public Profiled of(BinomialFit fit, String name) {
    Term term = fit.term(name);
    double[] axis = new double[fit.terms().size()];
    axis[fit.sample().design().indexOf(name)] = 1;
    Bound[] ends = new Bound[2];
    for (int side = 0; side < 2; side++) {
      ProfileLikelihood profile = new ProfileLikelihood(fit);
      ProfileCrossing walk =
          new ProfileCrossing(
              value -> profile.drop(axis, value),
              value -> profile.surestDrop(axis, value),
              acceptedDrop(confidence));
      ends[side] = walk.from(term.estimate(), 0.5 * term.standardError(), side == 0 ? -1 : 1);
    }
    double ratio = new ProfileLikelihood(fit).surestDrop(axis, 0);
    return new Profiled(name, new Interval(ends[0], ends[1], confidence), Math.max(ratio, 0));
  }

  /** Chi-square quantile on 1 degree of freedom. */
  static double acceptedDrop(double confidence) {
    return Math.pow(StandardNormal.reachOfMiddle(confidence), 2);
  }
}
