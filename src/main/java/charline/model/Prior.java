package charline.model;

import charline.quantity.Invariant;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Prior of one event's five parameters: weak and physical.
 *
 * @param tau normal on the logarithm of the even-chance dose in J/cm²
 * @param phi normal, cut off below 0
 * @param psi normal, cut off below 0
 * @param lnSigma normal on ln σ
 * @param omegaScale scale of the half-normal on ω
 */
public record Prior(Normal tau, Normal phi, Normal psi, Normal lnSigma, double omegaScale) {
  /** This and the next were chosen by simulated shops: reports/validation.md. */
  private static final double UNLIKER = 1.5;

  private static final double WIDER = 1.25;

  /** Mean and standard deviation. */
  public record Normal(double mean, double sd) {
    public Normal {
      Invariant.positive("Prior spread", sd, "");
    }

    Normal widened(double factor) {
      return new Normal(mean, factor * sd);
    }

    double logDensity(double x) {
      double z = (x - mean) / sd;
      return -z * z / 2;
    }
  }

  public Prior {
    Invariant.positive("Prior spread of boards", omegaScale, "");
  }

  /**
   * The prior that a promise has to survive as well: boards half as unlike again, transitions a
   * quarter wider. Few boards cannot tell a spread of 0.15 from one of 0.3, nor few patches a width
   * of 0.25 from one of 0.35, so what is promised of a board not seen yet would otherwise rest on
   * the prior's word alone.
   */
  public Prior sturdier() {
    Normal wider = new Normal(lnSigma.mean() + Math.log(WIDER), lnSigma.sd());
    return new Prior(tau, phi, psi, wider, UNLIKER * omegaScale);
  }

  /** The same centres with every spread so many times as large. */
  public Prior widened(double factor) {
    return new Prior(
        tau.widened(factor),
        phi.widened(factor),
        psi.widened(factor),
        lnSigma.widened(factor),
        factor * omegaScale);
  }

  /** Log density up to a constant of parameters (τ, φ, ψ, σ, ω, ...), on ln σ in place of σ. */
  double logDensity(double[] p) {
    double boards = p[PassesToEvent.OMEGA] / omegaScale;
    return tau.logDensity(p[PassesToEvent.TAU])
        + phi.logDensity(p[PassesToEvent.PHI])
        + psi.logDensity(p[PassesToEvent.PSI])
        + lnSigma.logDensity(Math.log(p[PassesToEvent.SIGMA]))
        - boards * boards / 2;
  }

  /**
   * Logarithm of what the density in {@link PassesToEvent} must be divided by to be one: normals,
   * those of φ and ψ cut off below 0, and a half-normal.
   */
  double lnNormaliser() {
    NormalDistribution standard = new NormalDistribution(null, 0, 1);
    double cutOff =
        standard.cumulativeProbability(phi.mean() / phi.sd())
            * standard.cumulativeProbability(psi.mean() / psi.sd());
    return Math.log(tau.sd() * phi.sd() * psi.sd() * lnSigma.sd() * omegaScale * cutOff / 2)
        + 2.5 * Math.log(2 * Math.PI);
  }

  /**
   * The prior used unless another is given: char near 30 J/cm², clearing near 10 J/cm², each within
   * a factor of e^1.5; intensity and passes count less than in proportion for char, more nearly in
   * proportion for clearing.
   */
  public static Prior usual(Event event) {
    Normal lnSigma = new Normal(Math.log(0.25), 0.6);
    return switch (event) {
      case CHAR ->
          new Prior(
              new Normal(Math.log(30), 1.5),
              new Normal(0.4, 0.4),
              new Normal(0.6, 0.35),
              lnSigma,
              0.2);
      case CLEARING ->
          new Prior(
              new Normal(Math.log(10), 1.5),
              new Normal(0.7, 0.4),
              new Normal(0.8, 0.35),
              lnSigma,
              0.2);
    };
  }
}
