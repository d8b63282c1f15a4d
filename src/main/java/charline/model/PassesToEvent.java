package charline.model;

import charline.model.way.Factor;
import charline.model.way.Trait;
import charline.stat.distribution.Exponential;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.quadrature.NormalTrapezoid;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * The log posterior density of the passes-to-event model, up to a constant, in the unconstrained
 * coordinates: τ, ln σ, {@link Softplus} of φ and ψ above their least and of ω, and the weights β
 * of the shifts.
 *
 * <p>A patch on board b has met its event by pass n when ln D + φ ln(F/F0) + ψ ln n &ge; τ + u_b +
 * σ e with e standard logistic and u_b normal with standard deviation ω. Where ways of working
 * differ, Σ β x is added to τ for the values x of its shifts. With z(n) = (ln D + φ ln(F/F0) + ψ ln
 * n - τ - u_b) / σ and Λ the logistic distribution function, a patch whose event came after l and
 * by h passes has likelihood Λ(z(h)) - Λ(z(l)), which for the logistic is exactly
 *
 * <pre>  Λ(z(h)) · Λ(-z(l)) · (1 - exp(-ψ ln(h/l) / σ)).</pre>
 *
 * So every patch is one success, one failure, or both with a factor free of the board: a single
 * reading is a logistic regression. Boards are integrated out by the trapezoidal rule, as fine as
 * the board with most trials needs it at these parameters.
 */
final class PassesToEvent implements TwiceDifferentiableFunction {
  static final int TAU = 0;
  static final int PHI = 1;
  static final int PSI = 2;
  static final int SIGMA = 3;
  static final int OMEGA = 4;

  /** Weights of the shifts come after the parameters that every model has. */
  static final int WAY = 5;

  private static final Softplus WEIGHT = new Softplus(0.15);
  private static final Softplus SPREAD = new Softplus(0.05);

  /** exp(±CAP) times exp(±CAP) stays a finite number, and so does its product with LARGE. */
  private static final double CAP = 200;

  private static final double LARGE = 1e100;

  private static final double LN_2 = Math.log(2);
  private static final int MANTISSA_BITS = 52;

  private final Prior prior;
  private final DoubleUnaryOperator spread;
  private final List<Factor> factors;

  /** What each weight moves the middle of τ's prior by. */
  private final double[] tauSlope;

  private final int size;

  private final CountedTrials trials;
  private final int mostOnABoard;

  /**
   * @param data one per patch; boards numbered from 0
   * @param lnReference natural logarithm of the reference intensity F0
   * @param factors shifts, as each patch has values for
   * @param lnThicker by how much the mean coat is thicker than the one that the prior of τ is for,
   *     in ln thickness: counts by the weight of thickness, where that is a term
   */
  PassesToEvent(
      List<CensoredPasses> data,
      double lnReference,
      Prior prior,
      List<Factor> factors,
      double lnThicker) {
    this.prior = prior;
    spread = prior.omega().density();
    this.factors = factors;
    tauSlope =
        factors.stream()
            .flatMapToDouble(
                f -> {
                  double move = f.trait() == Trait.THICKNESS ? lnThicker : 0;
                  return DoubleStream.generate(() -> move).limit(f.width());
                })
            .toArray();
    size = WAY + tauSlope.length;
    trials = CountedTrials.of(data, lnReference);
    mostOnABoard = trials.mostOnABoard();
  }

  /** The model where all patches are made in one way. */
  PassesToEvent(List<CensoredPasses> data, double lnReference, Prior prior) {
    this(data, lnReference, prior, List.of(), 0);
  }

  /** Where the search for the mode begins: the prior's centre. */
  double[] start() {
    double[] x = new double[size];
    x[TAU] = prior.tau().mean();
    x[PHI] = WEIGHT.coordinate(Math.max(prior.phi().mean() - prior.phi().least(), 0.1));
    x[PSI] = WEIGHT.coordinate(Math.max(prior.psi().mean() - prior.psi().least(), 0.1));
    x[SIGMA] = prior.lnSigma().mean();
    x[OMEGA] = SPREAD.coordinate(prior.omega().rootMeanSquare());
    int k = WAY;
    for (Factor factor : factors) {
      for (int end = k + factor.width(); k < end; k++) {
        x[k] = factor.prior().centre();
        x[TAU] += tauSlope[k - WAY] * x[k];
      }
    }
    return x;
  }

  /**
   * The parameters (τ, φ, ψ, σ, ω, β...) at unconstrained coordinates.
   *
   * @param prior whose least φ and ψ the coordinates begin at
   */
  static double[] parameters(double[] x, Prior prior) {
    double[] p = x.clone();
    p[PHI] = prior.phi().least() + WEIGHT.value(x[PHI]);
    p[PSI] = prior.psi().least() + WEIGHT.value(x[PSI]);
    p[SIGMA] = Math.exp(x[SIGMA]);
    p[OMEGA] = SPREAD.value(x[OMEGA]);
    return p;
  }

  /** The rule over the boards' shifts, in units of ω. */
  private NormalTrapezoid boardRule(double[] p) {
    return NormalTrapezoid.forLogistic(mostOnABoard, p[OMEGA] / p[SIGMA]);
  }

  @Override
  public double value(double[] x) {
    double[] p = parameters(x, prior);
    double perSigma = 1 / p[SIGMA];
    NormalTrapezoid rule = boardRule(p);
    double steepness = perSigma * p[OMEGA];
    double[] shift = rule.exponentials(steepness, CAP);
    double[] back = rule.exponentials(-steepness, CAP);
    double furthest = back[0];
    double value = logPrior(x, p);
    // -ln Λ(±z) = ln(1 + e^∓z): one exponential a setting, then products over the nodes.
    CountedTrials.Trial[] distinct = trials.distinct();
    double[] odds = new double[distinct.length];
    for (int t = 0; t < odds.length; t++) {
      odds[t] = Math.exp(cap(-distinct[t].sign() * perSigma * distinct[t].margin(p)));
    }
    double[] product = new double[rule.points()];
    int[] powers = new int[rule.points()];
    for (int b = 0; b < trials.boards().length; b++) {
      Arrays.fill(product, 1);
      Arrays.fill(powers, 0);
      double bound = 1;
      for (int t : trials.boards()[b]) {
        double each = odds[t];
        double most = 1 + each * furthest;
        bound *= most;
        if (bound > LARGE) {
          takePowers(product, powers);
          bound = most;
        }
        multiply(product, each, distinct[t].sign() > 0 ? shift : back);
      }
      value += trials.alike()[b] * lnMeanInverse(rule, product, powers);
    }
    for (int k = 0; k < trials.lnPassRatios().length; k++) {
      value +=
          trials.withRatio()[k]
              * Math.log(Exponential.cdf(p[PSI] * perSigma * trials.lnPassRatios()[k]));
    }
    return value;
  }

  /** Multiplies by 1 + odds at each node, moved by the node's shift. */
  private static void multiply(double[] product, double odds, double[] shift) {
    for (int q = 0; q < product.length; q++) {
      product[q] *= 1 + odds * shift[q];
    }
  }

  /**
   * Takes powers of two out of products before they leave the range of numbers: no digit is lost.
   */
  private static void takePowers(double[] product, int[] powers) {
    for (int q = 0; q < product.length; q++) {
      int power = Math.getExponent(product[q]);
      powers[q] += power;
      product[q] *= twoTo(-power);
    }
  }

  /** 2 to a power from -1022 to 1023; a smaller power is taken for 0. */
  private static double twoTo(int power) {
    return power < Double.MIN_EXPONENT
        ? 0
        : Double.longBitsToDouble((long) (power + Double.MAX_EXPONENT) << MANTISSA_BITS);
  }

  /** ln Σ w_q / (2^k_q product_q). */
  private static double lnMeanInverse(NormalTrapezoid rule, double[] product, int[] powers) {
    int least = powers[0];
    for (int power : powers) {
      least = Math.min(least, power);
    }
    double sum = 0;
    for (int q = 0; q < product.length; q++) {
      sum += rule.weight(q) / product[q] * twoTo(least - powers[q]);
    }
    return Math.log(sum) - least * LN_2;
  }

  private static double cap(double exponent) {
    return Math.max(-CAP, Math.min(CAP, exponent));
  }

  private static double largest(double[] values) {
    double largest = values[0];
    for (double value : values) {
      largest = Math.max(largest, value);
    }
    return largest;
  }

  /** ln Σ w_q exp(l_q). */
  private static double logMixture(NormalTrapezoid rule, double[] logLikelihood) {
    double top = largest(logLikelihood);
    double sum = 0;
    for (int q = 0; q < logLikelihood.length; q++) {
      sum += rule.weight(q) * Math.exp(logLikelihood[q] - top);
    }
    return top + Math.log(sum);
  }

  /** Log prior with what the change of coordinates adds. */
  private double logPrior(double[] x, double[] p) {
    double shifts = 0;
    int k = WAY;
    for (Factor factor : factors) {
      shifts += factor.prior().logDensity(p, k, factor.width());
      k += factor.width();
    }
    return prior.tau().logDensity(p[TAU] - tauMove(p))
        + prior.phi().logDensity(p[PHI])
        + WEIGHT.logJacobian(x[PHI])
        + prior.psi().logDensity(p[PSI])
        + WEIGHT.logJacobian(x[PSI])
        + prior.lnSigma().logDensity(x[SIGMA])
        + spread.applyAsDouble(p[OMEGA])
        + SPREAD.logJacobian(x[OMEGA])
        + shifts;
  }

  /** By how much the coats' thickness moves the middle of τ's prior. */
  private double tauMove(double[] p) {
    double move = 0;
    for (int k = 0; k < tauSlope.length; k++) {
      move += tauSlope[k] * p[WAY + k];
    }
    return move;
  }

  @Override
  public int dimension() {
    return size;
  }

  /**
   * Derivatives are taken in (τ, φ, ψ, ln σ, ω, β), where z is linear but for the factor 1/σ, and
   * then carried over to the coordinates.
   */
  @Override
  public Local local(double[] x) {
    double[] p = parameters(x, prior);
    Derivatives total = new Derivatives(size);
    NormalTrapezoid rule = boardRule(p);
    for (int b = 0; b < trials.boards().length; b++) {
      expandBoard(b, p, rule, total);
    }
    expandPassRatios(p, total);
    expandPrior(x[SIGMA], p, total);
    changeCoordinate(PHI, WEIGHT, x[PHI], total);
    changeCoordinate(PSI, WEIGHT, x[PSI], total);
    changeCoordinate(OMEGA, SPREAD, x[OMEGA], total);
    total.mirror();
    return new Local(total.value, total.gradient, total.hessian);
  }

  private void expandPrior(double lnSigma, double[] p, Derivatives total) {
    expandTau(p, total);
    expandNormal(PHI, prior.phi().normal(), p[PHI], total);
    expandNormal(PSI, prior.psi().normal(), p[PSI], total);
    expandNormal(SIGMA, prior.lnSigma(), lnSigma, total);
    total.value += prior.omega().logDensity(p[OMEGA]);
    total.gradient[OMEGA] += prior.omega().slope(p[OMEGA]);
    total.hessian[OMEGA][OMEGA] += prior.omega().bend(p[OMEGA]);
    int k = WAY;
    for (Factor factor : factors) {
      total.value += factor.prior().expand(p, k, factor.width(), total.gradient, total.hessian);
      k += factor.width();
    }
  }

  /** Adds the prior of τ, whose middle moves with the weight of thickness. */
  private void expandTau(double[] p, Derivatives total) {
    Prior.Normal normal = prior.tau();
    double precision = 1 / (normal.sd() * normal.sd());
    double off = p[TAU] - tauMove(p) - normal.mean();
    total.value += normal.logDensity(p[TAU] - tauMove(p));
    double[] slope = new double[size];
    slope[TAU] = 1;
    for (int k = 0; k < tauSlope.length; k++) {
      slope[WAY + k] = -tauSlope[k];
    }
    for (int r = 0; r < size; r++) {
      total.gradient[r] -= precision * off * slope[r];
      for (int c = 0; c < size; c++) {
        total.hessian[r][c] -= precision * slope[r] * slope[c];
      }
    }
  }

  private static void expandNormal(int k, Prior.Normal normal, double value, Derivatives total) {
    double precision = 1 / (normal.sd() * normal.sd());
    total.value += normal.logDensity(value);
    total.gradient[k] -= precision * (value - normal.mean());
    total.hessian[k][k] -= precision;
  }

  private static void changeCoordinate(int k, Softplus map, double x, Derivatives total) {
    double slope = map.slope(x);
    for (int j = 0; j < total.gradient.length; j++) {
      total.hessian[k][j] *= slope;
      total.hessian[j][k] *= slope;
    }
    total.hessian[k][k] += total.gradient[k] * map.bend(x) + map.logJacobianBend(x);
    total.gradient[k] = total.gradient[k] * slope + map.logJacobianSlope(x);
    total.value += map.logJacobian(x);
  }

  /** Adds one board: the mixture over its shift, by the derivatives of ln Σ w exp(l). */
  private void expandBoard(int board, double[] p, NormalTrapezoid rule, Derivatives total) {
    int points = rule.points();
    int size = p.length;
    Derivatives[] node = new Derivatives[points];
    double[] logLikelihood = new double[points];
    for (int q = 0; q < points; q++) {
      node[q] = new Derivatives(size);
      for (int t : trials.boards()[board]) {
        expandTrial(trials.distinct()[t], rule.node(q), p, node[q]);
      }
      logLikelihood[q] = node[q].value;
    }
    double mixture = logMixture(rule, logLikelihood);
    total.value += trials.alike()[board] * mixture;
    double[] mean = new double[size];
    for (int q = 0; q < points; q++) {
      double share = trials.alike()[board] * rule.weight(q) * Math.exp(logLikelihood[q] - mixture);
      for (int r = 0; r < size; r++) {
        mean[r] += share * node[q].gradient[r];
        for (int c = r; c < size; c++) {
          total.hessian[r][c] +=
              share * (node[q].hessian[r][c] + node[q].gradient[r] * node[q].gradient[c]);
        }
      }
    }
    for (int r = 0; r < size; r++) {
      total.gradient[r] += mean[r];
      for (int c = r; c < size; c++) {
        total.hessian[r][c] -= mean[r] * mean[c] / trials.alike()[board];
      }
    }
  }

  /** Adds ln Λ(±z) for a board shift of {@code node} standard deviations. */
  private static void expandTrial(CountedTrials.Trial t, double node, double[] p, Derivatives sum) {
    double perSigma = 1 / p[SIGMA];
    double z = (t.margin(p) - p[OMEGA] * node) * perSigma;
    double[] dz = new double[p.length];
    dz[TAU] = -perSigma;
    dz[PHI] = perSigma * t.lnIntensity();
    dz[PSI] = perSigma * t.lnPasses();
    dz[SIGMA] = -z;
    dz[OMEGA] = -perSigma * node;
    for (int k = 0; k < t.way().length; k++) {
      dz[WAY + k] = -perSigma * t.way()[k];
    }
    // Λ of either sign and its logarithm from one exponential, as this is done at every node.
    double away = Math.exp(-Math.abs(z));
    double more = 1 / (1 + away);
    double less = away * more;
    boolean expected = t.sign() * z >= 0;
    double slope = t.sign() * (expected ? less : more);
    double bend = -more * less;
    sum.value += (expected ? 0 : -Math.abs(z)) + Math.log(more);
    for (int r = 0; r < dz.length; r++) {
      sum.gradient[r] += slope * dz[r];
      for (int c = r; c < dz.length; c++) {
        sum.hessian[r][c] += bend * dz[r] * dz[c];
      }
      // z bends only along ln σ, which turns the sign of each of its slopes.
      sum.hessian[Math.min(r, SIGMA)][Math.max(r, SIGMA)] -= slope * dz[r];
    }
  }

  /** Adds ln(1 - e^-g), g = ψ ln(h/l) / σ. */
  private void expandPassRatios(double[] p, Derivatives total) {
    for (int k = 0; k < trials.lnPassRatios().length; k++) {
      double perPsi = trials.lnPassRatios()[k] / p[SIGMA];
      double g = p[PSI] * perPsi;
      double once = 1 / Math.expm1(g);
      double slope = trials.withRatio()[k] * once;
      double bend = -slope * (1 + once);
      total.value += trials.withRatio()[k] * Math.log(Exponential.cdf(g));
      total.gradient[PSI] += slope * perPsi;
      total.gradient[SIGMA] -= slope * g;
      total.hessian[PSI][PSI] += bend * perPsi * perPsi;
      total.hessian[SIGMA][SIGMA] += g * (bend * g + slope);
      total.hessian[PSI][SIGMA] -= perPsi * (bend * g + slope);
      total.hessian[SIGMA][PSI] -= perPsi * (bend * g + slope);
    }
  }

  /** Running sums. One half of the Hessian is enough, that above its diagonal. */
  private static final class Derivatives {
    double value;
    final double[] gradient;
    final double[][] hessian;

    Derivatives(int size) {
      gradient = new double[size];
      hessian = new double[size][size];
    }

    /** Sums in another order round otherwise: one half of the Hessian stands for both. */
    void mirror() {
      for (int r = 0; r < gradient.length; r++) {
        for (int c = 0; c < r; c++) {
          hessian[r][c] = hessian[c][r];
        }
      }
    }
  }
}
