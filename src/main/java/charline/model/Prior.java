package charline.model;

import charline.exposure.Emission;
import charline.model.way.HeavyTailedNormal;
import charline.model.way.Trait;
import charline.quantity.Invariant;
import charline.stat.distribution.StandardNormal;
import java.util.OptionalDouble;

/**
 * Prior of one event's five parameters: weak and physical.
 *
 * @param tau normal on the logarithm of the even-chance dose in J/cm²
 * @param phi normal on the weight of ln intensity, cut off at its least
 * @param psi normal on the weight of ln passes, cut off at its least
 * @param lnSigma normal on ln σ
 * @param omega prior of the spread between boards
 * @param atMicrometres thickness of the coat that τ is the middle for; empty where τ does not ask
 *     for a thickness
 */
public record Prior(
    Normal tau,
    Weight phi,
    Weight psi,
    Normal lnSigma,
    SpreadPrior omega,
    OptionalDouble atMicrometres) {
  /** Variance of Student's t with four degrees of freedom. */
  private static final double TAILED_VARIANCE = 2;

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

  /**
   * A normal cut off below.
   *
   * @param normal mean and standard deviation before the cut
   * @param least where it is cut off
   */
  public record Weight(Normal normal, double least) {
    /**
     * Least weight of intensity: more power at the same speed raises dose and intensity alike, so
     * at -1 it would change nothing and below it would do less.
     */
    public static final double OF_POWER = -1;

    public Weight(double mean, double sd, double least) {
      this(new Normal(mean, sd), least);
    }

    public double mean() {
      return normal.mean();
    }

    public double sd() {
      return normal.sd();
    }

    Weight widened(double factor) {
      return new Weight(normal.widened(factor), least);
    }

    double logDensity(double x) {
      return normal.logDensity(x);
    }

    /** Share of the normal that the cut leaves. */
    double kept() {
      return StandardNormal.below((mean() - least) / sd());
    }
  }

  public Prior {
    atMicrometres.ifPresent(um -> Invariant.positive("Coat thickness of a prior", um, "um"));
  }

  /** A prior that asks for no coat thickness. */
  public Prior(Normal tau, Weight phi, Weight psi, Normal lnSigma, SpreadPrior omega) {
    this(tau, phi, psi, lnSigma, omega, OptionalDouble.empty());
  }

  /** The same with another prior of the spread between boards. */
  public Prior with(SpreadPrior boards) {
    return new Prior(tau, phi, psi, lnSigma, boards, atMicrometres);
  }

  /** The same centres with every spread so many times as large. */
  public Prior widened(double factor) {
    return new Prior(
        tau.widened(factor),
        phi.widened(factor),
        psi.widened(factor),
        lnSigma.widened(factor),
        omega.widened(factor),
        atMicrometres);
  }

  /**
   * By how much a coat is thicker than the one that τ is the middle for, in ln thickness; 0 where
   * either is unknown.
   */
  double lnThicker(OptionalDouble lnMicrometres) {
    return atMicrometres.isPresent() && lnMicrometres.isPresent()
        ? lnMicrometres.getAsDouble() - Math.log(atMicrometres.getAsDouble())
        : 0;
  }

  /**
   * The prior for coats of one thickness: τ moves by the weight of thickness, of which only the
   * prior is known, and becomes as much less sure.
   *
   * @param lnMicrometres natural logarithm of the thickness; empty where it is unknown
   */
  public Prior forCoats(OptionalDouble lnMicrometres) {
    double thicker = lnThicker(lnMicrometres);
    HeavyTailedNormal weight = Trait.THICKNESS.prior();
    double spread = weight.scale() * thicker;
    Normal moved =
        new Normal(
            tau.mean() + weight.centre() * thicker,
            Math.sqrt(tau.sd() * tau.sd() + TAILED_VARIANCE * spread * spread));
    return new Prior(moved, phi, psi, lnSigma, omega);
  }

  /** Log density up to a constant of parameters (τ, φ, ψ, σ, ω, ...), on ln σ in place of σ. */
  double logDensity(double[] p) {
    return tau.logDensity(p[PassesToEvent.TAU])
        + phi.logDensity(p[PassesToEvent.PHI])
        + psi.logDensity(p[PassesToEvent.PSI])
        + lnSigma.logDensity(Math.log(p[PassesToEvent.SIGMA]))
        + omega.logDensity(p[PassesToEvent.OMEGA]);
  }

  /**
   * Logarithm of what the density in {@link PassesToEvent} must be divided by to be one: normals,
   * those of φ and ψ cut off below.
   */
  double lnNormaliser() {
    double kept = phi.kept() * psi.kept();
    return Math.log(tau.sd() * phi.sd() * psi.sd() * lnSigma.sd() * kept)
        + 2 * Math.log(2 * Math.PI);
  }

  /**
   * The prior used unless another is given. Pulsed: char near 30 J/cm², clearing of a coat of 70 µm
   * near 10 J/cm². Continuous: char near 24 J/cm², clearing near 20 J/cm². The reasons are in the
   * description of this package.
   */
  public static Prior usual(Event event, Emission emission) {
    boolean pulsed = emission == Emission.PULSED;
    Normal lnSigma = new Normal(Math.log(0.28), 0.6);
    return switch (event) {
      case CHAR ->
          new Prior(
              pulsed ? new Normal(Math.log(30), 1.5) : new Normal(Math.log(24), 1.2),
              new Weight(0, 0.5, Weight.OF_POWER),
              new Weight(0.6, 0.35, 0),
              lnSigma,
              LearnedSpread.OF_EMPTY_LOG);
      case CLEARING ->
          new Prior(
              new Normal(Math.log(pulsed ? 10 : 20), 1.5),
              new Weight(0.7, 0.4, 0),
              new Weight(0.8, 0.35, 0),
              lnSigma,
              LearnedSpread.OF_EMPTY_LOG,
              OptionalDouble.of(70));
    };
  }
}
