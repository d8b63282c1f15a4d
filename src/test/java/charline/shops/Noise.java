package charline.shops;

import charline.stat.distribution.Logistic;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What makes one patch differ from the next. All have median 0 and the standard deviation of the
 * standard logistic, pi / sqrt(3), so that only the shape differs.
 */
public enum Noise {
  /** The models' own. */
  LOGISTIC {
    @Override
    double cdf(double e) {
      return Logistic.cdf(e);
    }

    @Override
    double quantile(double p) {
      return Logistic.quantile(p);
    }
  },
  NORMAL {
    @Override
    double cdf(double e) {
      return STANDARD.cumulativeProbability(e / SD);
    }

    @Override
    double quantile(double p) {
      return SD * STANDARD.inverseCumulativeProbability(p);
    }
  },
  /** Gumbel with its long tail below: some patches give way far too early. */
  GUMBEL_EARLY {
    @Override
    double cdf(double e) {
      return -Math.expm1(-Math.exp(e / GUMBEL_SCALE + Math.log(Math.log(2))));
    }

    @Override
    double quantile(double p) {
      return GUMBEL_SCALE * (Math.log(-Math.log1p(-p)) - Math.log(Math.log(2)));
    }
  },
  /** Gumbel with its long tail above: some patches hold out far too long. */
  GUMBEL_LATE {
    @Override
    double cdf(double e) {
      return 1 - GUMBEL_EARLY.cdf(-e);
    }

    @Override
    double quantile(double p) {
      return -GUMBEL_EARLY.quantile(1 - p);
    }
  };

  private static final double SD = Math.PI / Math.sqrt(3);

  /** A Gumbel's standard deviation is pi / sqrt(6) of its scale. */
  private static final double GUMBEL_SCALE = Math.sqrt(2);

  private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);

  /** Chance of a value up to e. */
  abstract double cdf(double e);

  /** The value with chance p below it. */
  abstract double quantile(double p);
}
