package charline.model;

import charline.stat.GaussHermite;
import charline.stat.Logistic;
import charline.stat.SmoothFunction;
import java.util.Arrays;
import java.util.List;

/**
 * The log posterior density of the passes-to-event model, up to a constant, in the unconstrained
 * coordinates: τ, ln σ, and {@link Softplus} of φ, ψ and ω.
 *
 * <p>A patch on board b has met its event by pass n when ln D + φ ln(F/F0) + ψ ln n &ge; τ + u_b +
 * σ e with e standard logistic and u_b normal with standard deviation ω. With z(n) = (ln D + φ
 * ln(F/F0) + ψ ln n - τ - u_b) / σ and Λ the logistic distribution function, a patch whose event
 * came after l and by h passes has likelihood Λ(z(h)) - Λ(z(l)), which for the logistic is exactly
 *
 * <pre>  Λ(z(h)) · Λ(-z(l)) · (1 - exp(-ψ ln(h/l) / σ)).</pre>
 *
 * So every patch is one success, one failure, or both with a factor free of the board: a single
 * reading is a logistic regression. Boards are integrated out by Gauss-Hermite quadrature.
 */
final class PassesToEvent implements SmoothFunction {
  static final int TAU = 0;
  static final int PHI = 1;
  static final int PSI = 2;
  static final int SIGMA = 3;
  static final int OMEGA = 4;
  static final int PARAMETERS = 5;

  private static final Softplus WEIGHT = new Softplus(0.15);
  private static final Softplus SPREAD = new Softplus(0.05);
  static final GaussHermite BOARD_RULE = new GaussHermite(15);

  /** exp(±CAP) times exp(±CAP) times the largest running product stays a finite number. */
  private static final double CAP = 200;

  private static final double LARGE = 1e100;

  /** One success (+1) or failure (-1) of a logistic regression. */
  private record Trial(double lnDose, double lnIntensity, double lnPasses, int sign) {}

  private final Prior prior;
  private final Trial[][] boards;
  private final double[] lnPassRatios;

  /**
   * @param data one per patch; boards numbered from 0
   * @param lnReference natural logarithm of the reference intensity F0
   */
  PassesToEvent(List<CensoredPasses> data, double lnReference, Prior prior) {
    this.prior = prior;
    int count = data.stream().mapToInt(CensoredPasses::board).max().orElse(-1) + 1;
    boards = new Trial[count][];
    for (int b = 0; b < count; b++) {
      int board = b;
      boards[b] =
          data.stream()
              .filter(d -> d.board() == board)
              .flatMap(d -> trials(d, lnReference).stream())
              .toArray(Trial[]::new);
    }
    lnPassRatios =
        data.stream()
            .filter(d -> d.seen() && d.passesWithout() > 0)
            .mapToDouble(d -> Math.log((double) d.passesWith() / d.passesWithout()))
            .toArray();
  }

  private static List<Trial> trials(CensoredPasses d, double lnReference) {
    double f = d.lnIntensity() - lnReference;
    Trial failure =
        d.passesWithout() > 0 ? new Trial(d.lnDose(), f, Math.log(d.passesWithout()), -1) : null;
    Trial success = d.seen() ? new Trial(d.lnDose(), f, Math.log(d.passesWith()), 1) : null;
    if (failure == null) {
      return success == null ? List.of() : List.of(success);
    }
    return success == null ? List.of(failure) : List.of(failure, success);
  }

  /** Where the search for the mode begins: the prior's centre. */
  double[] start() {
    return new double[] {
      prior.tau().mean(),
      WEIGHT.coordinate(Math.max(prior.phi().mean(), 0.1)),
      WEIGHT.coordinate(Math.max(prior.psi().mean(), 0.1)),
      prior.lnSigma().mean(),
      SPREAD.coordinate(prior.omegaScale())
    };
  }

  /** The parameters (τ, φ, ψ, σ, ω) at unconstrained coordinates. */
  static double[] parameters(double[] x) {
    return new double[] {
      x[TAU], WEIGHT.value(x[PHI]), WEIGHT.value(x[PSI]), Math.exp(x[SIGMA]), SPREAD.value(x[OMEGA])
    };
  }

  @Override
  public double value(double[] x) {
    double[] p = parameters(x);
    double perSigma = 1 / p[SIGMA];
    int points = BOARD_RULE.points();
    double[] shift = new double[points];
    for (int q = 0; q < points; q++) {
      shift[q] = Math.exp(cap(perSigma * p[OMEGA] * BOARD_RULE.node(q)));
    }
    double value = logPrior(x, p);
    double[] product = new double[points];
    double[] logLikelihood = new double[points];
    for (Trial[] board : boards) {
      Arrays.fill(product, 1);
      Arrays.fill(logLikelihood, 0);
      for (Trial t : board) {
        // -ln Λ(±z) = ln(1 + e^∓z): one exponential a trial, then products over the nodes.
        double margin = t.lnDose + p[PHI] * t.lnIntensity + p[PSI] * t.lnPasses - p[TAU];
        double odds = Math.exp(cap(-t.sign * perSigma * margin));
        for (int q = 0; q < points; q++) {
          product[q] *= 1 + (t.sign > 0 ? odds * shift[q] : odds / shift[q]);
          if (product[q] > LARGE) {
            logLikelihood[q] -= Math.log(product[q]);
            product[q] = 1;
          }
        }
      }
      for (int q = 0; q < points; q++) {
        logLikelihood[q] -= Math.log(product[q]);
      }
      value += logMixture(logLikelihood);
    }
    for (double ratio : lnPassRatios) {
      value += Math.log(-Math.expm1(-p[PSI] * perSigma * ratio));
    }
    return value;
  }

  private static double cap(double exponent) {
    return Math.max(-CAP, Math.min(CAP, exponent));
  }

  /** ln Σ w_q exp(l_q). */
  private static double logMixture(double[] logLikelihood) {
    double top = Double.NEGATIVE_INFINITY;
    for (double l : logLikelihood) {
      top = Math.max(top, l);
    }
    double sum = 0;
    for (int q = 0; q < logLikelihood.length; q++) {
      sum += BOARD_RULE.weight(q) * Math.exp(logLikelihood[q] - top);
    }
    return top + Math.log(sum);
  }

  /** Log prior with what the change of coordinates adds. */
  private double logPrior(double[] x, double[] p) {
    double omega = p[OMEGA] / prior.omegaScale();
    return prior.tau().logDensity(p[TAU])
        + prior.phi().logDensity(p[PHI])
        + WEIGHT.logJacobian(x[PHI])
        + prior.psi().logDensity(p[PSI])
        + WEIGHT.logJacobian(x[PSI])
        + prior.lnSigma().logDensity(x[SIGMA])
        - omega * omega / 2
        + SPREAD.logJacobian(x[OMEGA]);
  }

  /**
   * Derivatives are taken in (τ, φ, ψ, ln σ, ω), where z is linear but for the factor 1/σ, and then
   * carried over to the coordinates.
   */
  @Override
  public Expansion expand(double[] x) {
    double[] p = parameters(x);
    Derivatives total = new Derivatives();
    for (Trial[] board : boards) {
      expandBoard(board, p, total);
    }
    expandPassRatios(p, total);
    expandPrior(x[SIGMA], p, total);
    changeCoordinate(PHI, WEIGHT, x[PHI], total);
    changeCoordinate(PSI, WEIGHT, x[PSI], total);
    changeCoordinate(OMEGA, SPREAD, x[OMEGA], total);
    return new Expansion(total.value, total.gradient, total.hessian);
  }

  private void expandPrior(double lnSigma, double[] p, Derivatives total) {
    expandNormal(TAU, prior.tau(), p[TAU], total);
    expandNormal(PHI, prior.phi(), p[PHI], total);
    expandNormal(PSI, prior.psi(), p[PSI], total);
    expandNormal(SIGMA, prior.lnSigma(), lnSigma, total);
    expandNormal(OMEGA, new Prior.Normal(0, prior.omegaScale()), p[OMEGA], total);
  }

  private static void expandNormal(int k, Prior.Normal normal, double value, Derivatives total) {
    double precision = 1 / (normal.sd() * normal.sd());
    total.value += normal.logDensity(value);
    total.gradient[k] -= precision * (value - normal.mean());
    total.hessian[k][k] -= precision;
  }

  private static void changeCoordinate(int k, Softplus map, double x, Derivatives total) {
    double slope = map.slope(x);
    for (int j = 0; j < PARAMETERS; j++) {
      total.hessian[k][j] *= slope;
      total.hessian[j][k] *= slope;
    }
    total.hessian[k][k] += total.gradient[k] * map.bend(x) + map.logJacobianBend(x);
    total.gradient[k] = total.gradient[k] * slope + map.logJacobianSlope(x);
    total.value += map.logJacobian(x);
  }

  /** Adds one board: the mixture over its shift, by the derivatives of ln Σ w exp(l). */
  private static void expandBoard(Trial[] board, double[] p, Derivatives total) {
    int points = BOARD_RULE.points();
    Derivatives[] node = new Derivatives[points];
    double[] logLikelihood = new double[points];
    for (int q = 0; q < points; q++) {
      node[q] = new Derivatives();
      for (Trial t : board) {
        expandTrial(t, BOARD_RULE.node(q), p, node[q]);
      }
      logLikelihood[q] = node[q].value;
    }
    double mixture = logMixture(logLikelihood);
    total.value += mixture;
    double[] mean = new double[PARAMETERS];
    for (int q = 0; q < points; q++) {
      double share = BOARD_RULE.weight(q) * Math.exp(logLikelihood[q] - mixture);
      for (int r = 0; r < PARAMETERS; r++) {
        mean[r] += share * node[q].gradient[r];
        for (int c = 0; c < PARAMETERS; c++) {
          total.hessian[r][c] +=
              share * (node[q].hessian[r][c] + node[q].gradient[r] * node[q].gradient[c]);
        }
      }
    }
    for (int r = 0; r < PARAMETERS; r++) {
      total.gradient[r] += mean[r];
      for (int c = 0; c < PARAMETERS; c++) {
        total.hessian[r][c] -= mean[r] * mean[c];
      }
    }
  }

  /** Adds ln Λ(±z) for a board shift of {@code node} standard deviations. */
  private static void expandTrial(Trial t, double node, double[] p, Derivatives sum) {
    double perSigma = 1 / p[SIGMA];
    double margin =
        t.lnDose + p[PHI] * t.lnIntensity + p[PSI] * t.lnPasses - p[TAU] - p[OMEGA] * node;
    double z = margin * perSigma;
    double[] dz = {
      -perSigma, perSigma * t.lnIntensity, perSigma * t.lnPasses, -z, -perSigma * node
    };
    double slope = t.sign * Logistic.cdf(-t.sign * z);
    double bend = -Logistic.cdf(z) * Logistic.cdf(-z);
    sum.value += Logistic.logCdf(t.sign * z);
    for (int r = 0; r < PARAMETERS; r++) {
      sum.gradient[r] += slope * dz[r];
      for (int c = 0; c < PARAMETERS; c++) {
        sum.hessian[r][c] += bend * dz[r] * dz[c];
      }
      // z bends only along ln σ, which turns the sign of each of its slopes.
      sum.hessian[SIGMA][r] -= slope * dz[r];
      if (r != SIGMA) {
        sum.hessian[r][SIGMA] -= slope * dz[r];
      }
    }
  }

  /** Adds ln(1 - e^-g), g = ψ ln(h/l) / σ. */
  private void expandPassRatios(double[] p, Derivatives total) {
    for (double ratio : lnPassRatios) {
      double perPsi = ratio / p[SIGMA];
      double g = p[PSI] * perPsi;
      double slope = 1 / Math.expm1(g);
      double bend = -slope * (1 + slope);
      total.value += Math.log(-Math.expm1(-g));
      total.gradient[PSI] += slope * perPsi;
      total.gradient[SIGMA] -= slope * g;
      total.hessian[PSI][PSI] += bend * perPsi * perPsi;
      total.hessian[SIGMA][SIGMA] += g * (bend * g + slope);
      total.hessian[PSI][SIGMA] -= perPsi * (bend * g + slope);
      total.hessian[SIGMA][PSI] -= perPsi * (bend * g + slope);
    }
  }

  /** Running sums. */
  private static final class Derivatives {
    double value;
    final double[] gradient = new double[PARAMETERS];
    final double[][] hessian = new double[PARAMETERS][PARAMETERS];
  }
}
