package charline.model;

import charline.stat.distribution.Logistic;
import charline.stat.quadrature.NormalTrapezoid;
import charline.stat.sampling.WeightedDraws;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Weighted draws of one event's parameters, and what follows from them for a board not seen yet.
 *
 * <p>On a new board the event's chance at a setting is the mean over the board's shift, E Λ((m - u)
 * / σ) with m = ln D + φ ln(F/F0) + ψ ln n - τ. It rises with m, so each draw has one margin at
 * which the chance is a given number, and with it one dose: limits on risk become limits on dose
 * without any further integral.
 */
public final class Posterior {
  /** A normal of variance 8 / pi looks like the logistic; only a start hangs on it. */
  private static final double NORMAL_FOR_LOGISTIC = Math.PI / 8;

  private static final int NEWTON_STEPS = 12;

  /** Steps shrink to their square, so what is left after one of this size is rounding. */
  private static final double NEWTON_ACCURACY = 1e-6;

  /** Largest exponent kept; its exponential and the inverse of that are still ordinary numbers. */
  private static final double CAP = 700;

  private static final double OUT_OF_RANGE = Math.exp(CAP);

  private final double lnReference;
  private final double[] tau;
  private final double[] phi;
  private final double[] psi;
  private final double[] sigma;
  private final double[] omega;
  private final double[][] coatWeights;
  private final double[] weights;

  /**
   * The rule over the board's shift, draw by draw: as fine as a single patch needs it where boards
   * are so much more unlike than patches.
   */
  private final NormalTrapezoid[] rules;

  /**
   * exp(ω x / σ) at each node x on one side of the middle one, draw by draw, the widest first: the
   * same for every setting. The other side mirrors them.
   */
  private final double[][] wingOdds;

  /**
   * Takes draws in the coordinates of {@link PassesToEvent}.
   *
   * @param prior whose least φ and ψ the coordinates begin at
   * @param coat values of the coat's terms that this posterior is to be for: they go into τ
   */
  Posterior(WeightedDraws draws, double lnReference, Prior prior, double[] coat) {
    this.lnReference = lnReference;
    double[][] draw =
        Arrays.stream(draws.points())
            .map(x -> PassesToEvent.parameters(x, prior))
            .toArray(double[][]::new);
    coatWeights = new double[coat.length][];
    for (int k = 0; k < coat.length; k++) {
      coatWeights[k] = column(draw, PassesToEvent.COAT + k);
    }
    tau = column(draw, PassesToEvent.TAU);
    Arrays.setAll(tau, i -> tau[i] + coatShift(i, coat));
    phi = column(draw, PassesToEvent.PHI);
    psi = column(draw, PassesToEvent.PSI);
    sigma = column(draw, PassesToEvent.SIGMA);
    omega = column(draw, PassesToEvent.OMEGA);
    weights = draws.weights().clone();
    rules = rules();
    wingOdds = wingOdds();
  }

  private Posterior(Posterior all, int[] draws) {
    lnReference = all.lnReference;
    tau = chosen(all.tau, draws);
    phi = chosen(all.phi, draws);
    psi = chosen(all.psi, draws);
    sigma = chosen(all.sigma, draws);
    omega = chosen(all.omega, draws);
    coatWeights =
        Arrays.stream(all.coatWeights).map(w -> chosen(w, draws)).toArray(double[][]::new);
    weights = new double[draws.length];
    Arrays.fill(weights, 1.0 / draws.length);
    rules = rules();
    wingOdds = wingOdds();
  }

  private NormalTrapezoid[] rules() {
    NormalTrapezoid[] found = new NormalTrapezoid[weights.length];
    Arrays.setAll(found, i -> NormalTrapezoid.forLogistic(1, omega[i] / sigma[i]));
    return found;
  }

  private double[][] wingOdds() {
    double[][] odds = new double[weights.length][];
    for (int i = 0; i < odds.length; i++) {
      odds[i] = new double[rules[i].points() / 2];
      for (int k = 0; k < odds[i].length; k++) {
        double node = Math.abs(rules[i].node(k));
        odds[i][k] = Math.exp(Math.min(CAP, omega[i] * node / sigma[i]));
      }
    }
    return odds;
  }

  /** The same posterior in {@code count} equally weighted draws. */
  public Posterior thinned(int count) {
    return new Posterior(this, resample(count));
  }

  private static double[] chosen(double[] values, int[] draws) {
    return Arrays.stream(draws).mapToDouble(d -> values[d]).toArray();
  }

  private Posterior(Posterior draws, double[] weights) {
    lnReference = draws.lnReference;
    tau = draws.tau;
    phi = draws.phi;
    psi = draws.psi;
    sigma = draws.sigma;
    omega = draws.omega;
    coatWeights = draws.coatWeights;
    rules = draws.rules;
    wingOdds = draws.wingOdds;
    this.weights = weights;
  }

  /** True if both weight the very same draws. */
  boolean weighsTheDrawsOf(Posterior other) {
    return tau == other.tau;
  }

  /**
   * The same draws with other weights.
   *
   * @param others one per draw, adding up to 1
   */
  Posterior weighted(double[] others) {
    return new Posterior(this, others.clone());
  }

  private static double[] column(double[][] draws, int parameter) {
    return Arrays.stream(draws).mapToDouble(d -> d[parameter]).toArray();
  }

  private static double[] exp(double[] logs) {
    return Arrays.stream(logs).map(Math::exp).toArray();
  }

  public int size() {
    return weights.length;
  }

  /** Weight of one of the coat's terms, in the order of the design. */
  Estimate coatWeight(int term) {
    return estimate(coatWeights[term]);
  }

  /**
   * By how much the even-chance dose of one coat lies above that of another, in ln dose.
   *
   * @param coat values of the coat's terms from those of the other; none where all coats are alike
   */
  double coatShift(int draw, double[] coat) {
    double shift = 0;
    for (int k = 0; k < coat.length; k++) {
      shift += coatWeights[k][draw] * coat[k];
    }
    return shift;
  }

  public Estimate tau() {
    return estimate(tau);
  }

  public Estimate phi() {
    return estimate(phi);
  }

  public Estimate psi() {
    return estimate(psi);
  }

  public Estimate sigma() {
    return estimate(sigma);
  }

  public Estimate omega() {
    return estimate(omega);
  }

  /** One-pass dose with an even chance on an average board at the reference intensity, J/cm². */
  public Estimate evenDoseJoulesPerCm2() {
    return estimate(exp(tau));
  }

  private Estimate estimate(double[] values) {
    return new Estimate(quantile(values, 0.5), quantile(values, 0.05), quantile(values, 0.95));
  }

  /**
   * Mean and variance of a quantity.
   *
   * @param mean posterior mean
   * @param variance posterior variance, 0 or more
   */
  public record Moments(double mean, double variance) {
    public Moments plus(Moments other) {
      return new Moments(mean + other.mean, variance + other.variance);
    }
  }

  /** Moments of τ as it is at another intensity, φ, ψ and ln σ. */
  public Moments[] moments(double lnIntensity) {
    return new Moments[] {
      moments(perDraw(i -> tau[i] - phi[i] * (lnIntensity - lnReference))),
      moments(phi),
      moments(psi),
      moments(perDraw(i -> Math.log(sigma[i])))
    };
  }

  private Moments moments(double[] values) {
    double mean = mean(values);
    return new Moments(mean, mean(perDraw(i -> (values[i] - mean) * (values[i] - mean))));
  }

  /** Posterior mean of a quantity given per draw. */
  public double mean(double[] perDraw) {
    return WeightedDraws.mean(perDraw, weights);
  }

  /** Posterior quantile of a quantity given per draw. */
  public double quantile(double[] perDraw, double probability) {
    return WeightedDraws.quantile(perDraw, weights, probability);
  }

  /**
   * The event's chance on a new board, one per draw.
   *
   * @param doseJoulesPerCm2 dose per pass
   * @param intensity fluence (J/cm²) or irradiance (W/cm²)
   * @param passes number of passes
   */
  public double[] newBoardChance(double doseJoulesPerCm2, double intensity, int passes) {
    return newBoardChance(doseJoulesPerCm2, intensity, passes, 0);
  }

  /**
   * The event's chance on a new board over an area of which a share is a {@link Seam}, one per
   * draw.
   *
   * @param doseJoulesPerCm2 dose per pass
   * @param intensity fluence (J/cm²) or irradiance (W/cm²)
   * @param passes number of passes of one stroke
   * @param seamShare share of the area that gets twice the passes, 0 to 1
   */
  public double[] newBoardChance(
      double doseJoulesPerCm2, double intensity, int passes, double seamShare) {
    double lnDose = Math.log(doseJoulesPerCm2);
    double f = Math.log(intensity) - lnReference;
    double lnPasses = Math.log(passes);
    return perDraw(i -> chance(i, lnDose + phi[i] * f + psi[i] * lnPasses - tau[i], seamShare));
  }

  private double chance(int draw, double margin, double seamShare) {
    return seamShare == 0
        ? chance(draw, margin)
        : seam(draw, seamShare).mean(margin, omega[draw], rules[draw], wingOdds[draw]).chance();
  }

  private Seam seam(int draw, double share) {
    return new Seam(share, psi[draw], sigma[draw]);
  }

  /** E Λ((margin - u) / σ): one exponential, as the nodes' own are kept. */
  private double chance(int draw, double margin) {
    double[] wing = wingOdds[draw];
    NormalTrapezoid rule = rules[draw];
    if (wing[0] >= OUT_OF_RANGE) {
      return chanceOfSteps(draw, margin);
    }
    double odds = Math.exp(Math.max(-CAP, Math.min(CAP, -margin / sigma[draw])));
    double sum = rule.weight(wing.length) / (1 + odds);
    for (int k = 0; k < wing.length; k++) {
      sum += rule.weight(k) * (1 / (1 + odds * wing[k]) + 1 / (1 + odds / wing[k]));
    }
    return sum;
  }

  /** The same where patches hardly differ and boards do: every node is a step. */
  private double chanceOfSteps(int draw, double margin) {
    NormalTrapezoid rule = rules[draw];
    double sum = 0;
    for (int q = 0; q < rule.points(); q++) {
      sum += rule.weight(q) * Logistic.cdf((margin - omega[draw] * rule.node(q)) / sigma[draw]);
    }
    return sum;
  }

  /**
   * The doses at which the event's chance on a new board is a given one.
   *
   * @param chance inside (0, 1)
   */
  public DoseLimit doseLimit(double chance) {
    return doseLimit(chance, 0);
  }

  /**
   * The doses at which the event's chance on a new board is a given one, over an area of which a
   * share is a {@link Seam}.
   *
   * @param chance inside (0, 1)
   * @param seamShare share of the area that gets twice the passes, 0 to 1
   */
  public DoseLimit doseLimit(double chance, double seamShare) {
    BrentSolver root = new BrentSolver(1e-10, 1e-9); // keeps state, so one for each call
    double[] offset =
        perDraw(
            i ->
                byNewton(i, chance, seamShare)
                    .orElseGet(
                        () -> {
                          double reach =
                              8 * omega[i] + sigma[i] * (Math.abs(Logistic.quantile(chance)) + 1);
                          double seam = seamShare == 0 ? 0 : psi[i] * Math.log(2);
                          return root.solve(
                              200, m -> chance(i, m, seamShare) - chance, -reach - seam, reach);
                        }));
    return new DoseLimit(this, offset);
  }

  /** The margin with a chance; its log odds are all but straight, so few steps are needed. */
  private OptionalDouble byNewton(int draw, double chance, double seamShare) {
    double[] wing = wingOdds[draw];
    NormalTrapezoid rule = rules[draw];
    double target = Logistic.quantile(chance);
    double spread = omega[draw] / sigma[draw];
    double margin = target * sigma[draw] * Math.sqrt(1 + NORMAL_FOR_LOGISTIC * spread * spread);
    for (int step = 0; step < NEWTON_STEPS; step++) {
      if (wing[0] >= OUT_OF_RANGE) {
        return OptionalDouble.empty();
      }
      Seam.Mean now =
          seamShare == 0
              ? single(draw, margin)
              : seam(draw, seamShare).mean(margin, omega[draw], rule, wing);
      double sum = now.chance();
      double slope = now.slope();
      double move = sigma[draw] * (Logistic.quantile(sum) - target) * sum * (1 - sum) / slope;
      if (!(Math.abs(move) < Double.MAX_VALUE)) {
        return OptionalDouble.empty();
      }
      margin -= move;
      if (Math.abs(move) < NEWTON_ACCURACY) {
        return OptionalDouble.of(margin);
      }
    }
    return OptionalDouble.empty();
  }

  /** The chance with its slope against margin / σ, where nothing gets twice the passes. */
  private Seam.Mean single(int draw, double margin) {
    double[] wing = wingOdds[draw];
    NormalTrapezoid rule = rules[draw];
    double odds = Math.exp(Math.max(-CAP, Math.min(CAP, -margin / sigma[draw])));
    double each = 1 / (1 + odds);
    double sum = rule.weight(wing.length) * each;
    double slope = rule.weight(wing.length) * each * (1 - each);
    for (int k = 0; k < wing.length; k++) {
      double up = 1 / (1 + odds * wing[k]);
      double down = 1 / (1 + odds / wing[k]);
      sum += rule.weight(k) * (up + down);
      slope += rule.weight(k) * (up * (1 - up) + down * (1 - down));
    }
    return new Seam.Mean(sum, slope);
  }

  double lnDose(int draw, double offset, double lnIntensity, double lnPasses) {
    return tau[draw] + offset - phi[draw] * (lnIntensity - lnReference) - psi[draw] * lnPasses;
  }

  /**
   * (m - u) / σ of a patch on a board whose shift is {@code node} standard deviations; its logistic
   * is the event's chance.
   */
  double score(int draw, double node, double lnDose, double lnIntensity, double lnPasses) {
    return (lnDose
            + phi[draw] * (lnIntensity - lnReference)
            + psi[draw] * lnPasses
            - tau[draw]
            - omega[draw] * node)
        / sigma[draw];
  }

  double psi(int draw) {
    return psi[draw];
  }

  double[] perDraw(IntToDoubleFunction value) {
    double[] values = new double[weights.length];
    Arrays.setAll(values, value);
    return values;
  }

  /** Draws taken as often as they weigh, so that each counts the same. */
  public List<Draw> alike(int count) {
    return Arrays.stream(resample(count))
        .mapToObj(
            i -> new Draw(lnReference, tau[i], phi[i], psi[i], sigma[i], omega[i], coatWeights(i)))
        .toList();
  }

  private double[] coatWeights(int draw) {
    return Arrays.stream(coatWeights).mapToDouble(weights -> weights[draw]).toArray();
  }

  /** Indices of {@code count} equally weighted draws. */
  int[] resample(int count) {
    return new WeightedDraws(new double[weights.length][0], weights).resample(count);
  }
}
