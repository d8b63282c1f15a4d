package charline.stat.regression;

import org.apache.commons.math3.special.Erf;

/**
 * The curve between the linear predictor eta and the risk p. All three have log p and log (1-p)
 * concave in eta, so that their likelihoods have one maximum at most. Written to keep their
 * relative accuracy in both tails.
 */
public enum Link {
  /** {@code eta = ln(p / (1-p))}. */
  LOGIT {
    @Override
    public double predictor(double risk) {
      return Math.log(requireRisk(risk)) - Math.log1p(-risk);
    }

    @Override
    public double logRisk(double eta) {
      return eta < 0 ? eta - Math.log1p(Math.exp(eta)) : -Math.log1p(Math.exp(-eta));
    }

    @Override
    public double logComplement(double eta) {
      return logRisk(-eta);
    }

    @Override
    double[] slopesOfLogRisk(double eta) {
      double p = Math.exp(logRisk(eta));
      double q = Math.exp(logRisk(-eta));
      return new double[] {q, -p * q};
    }

    @Override
    double[] slopesOfLogComplement(double eta) {
      double[] mirrored = slopesOfLogRisk(-eta);
      return new double[] {-mirrored[0], mirrored[1]};
    }
  },

  /** eta is the normal quantile of p. */
  PROBIT {
    @Override
    public double predictor(double risk) {
      return -Math.sqrt(2) * Erf.erfcInv(2 * requireRisk(risk));
    }

    @Override
    public double logRisk(double eta) {
      return eta > FAR_TAIL
          ? Math.log(0.5 * Erf.erfc(-eta / Math.sqrt(2)))
          : -0.5 * eta * eta - LOG_ROOT_TWO_PI - Math.log(-eta) + Math.log(tailSeries(eta));
    }

    @Override
    public double logComplement(double eta) {
      return logRisk(-eta);
    }

    @Override
    double[] slopesOfLogRisk(double eta) {
      double hazard = Math.exp(-0.5 * eta * eta - LOG_ROOT_TWO_PI - logRisk(eta));
      return new double[] {hazard, -hazard * (eta + hazard)};
    }

    @Override
    double[] slopesOfLogComplement(double eta) {
      double[] mirrored = slopesOfLogRisk(-eta);
      return new double[] {-mirrored[0], mirrored[1]};
    }

    /** Abramowitz and Stegun 1964, 26.2.12. */
    private double tailSeries(double eta) {
      double s = 1 / (eta * eta);
      return 1 - s * (1 - 3 * s * (1 - 5 * s * (1 - 7 * s)));
    }
  },

  /** {@code eta = ln(-ln(1-p))}. */
  CLOGLOG {
    @Override
    public double predictor(double risk) {
      return Math.log(-Math.log1p(-requireRisk(risk)));
    }

    @Override
    public double logRisk(double eta) {
      return Math.log(-Math.expm1(-Math.exp(eta)));
    }

    @Override
    public double logComplement(double eta) {
      return -Math.exp(eta);
    }

    @Override
    double[] slopesOfLogRisk(double eta) {
      double e = Math.exp(eta);
      if (e > 700) {
        return new double[] {0, 0};
      }
      double slope = e < 1e-300 ? 1 : e / Math.expm1(e);
      double ratio = e < 1e-300 ? 1 : e / -Math.expm1(-e);
      return new double[] {slope, slope * (1 - ratio)};
    }

    @Override
    double[] slopesOfLogComplement(double eta) {
      double e = Math.exp(eta);
      return new double[] {-e, -e};
    }
  };

  private static final double FAR_TAIL = -30;
  private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  /**
   * The linear predictor of a risk.
   *
   * @throws IllegalArgumentException if the risk does not lie between 0 and 1
   */
  public abstract double predictor(double risk);

  /** The risk at a linear predictor. */
  public double risk(double eta) {
    return Math.exp(logRisk(eta));
  }

  public abstract double logRisk(double eta);

  public abstract double logComplement(double eta);

  /** First and second derivative of {@link #logRisk}. */
  abstract double[] slopesOfLogRisk(double eta);

  /** First and second derivative of {@link #logComplement}. */
  abstract double[] slopesOfLogComplement(double eta);

  /** Expected information of one trial about eta: (dp/deta)² / (p (1-p)). */
  public double information(double eta) {
    double up = slopesOfLogRisk(eta)[0];
    double down = slopesOfLogComplement(eta)[0];
    return -up * down; // p'/p times p'/(1-p)
  }

  private static double requireRisk(double risk) {
    if (!(risk > 0 && risk < 1)) {
      throw new IllegalArgumentException(
          "Risk must lie between 0 and 1, not " + risk + "; write 0.05 for 5 %.");
    }
    return risk;
  }
}
