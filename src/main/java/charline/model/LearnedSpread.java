package charline.model;

import charline.quantity.Invariant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What a whole log says of the spread between boards in one more stratum: strata have a common
 * level of ω, from which each differs by a factor, and the level is known as well as the other
 * strata tell it. Given the level, ln ω is normal about its logarithm; over what is known of the
 * level this is a mixture.
 *
 * @param levels spreads that the level may be, in ln dose, rising
 * @param weights what each weighs, adding up to 1
 * @param lnFactor standard deviation of ln ω about the level
 * @param strata how many other strata the level was learned from, 0 or more
 */
public record LearnedSpread(List<Double> levels, List<Double> weights, double lnFactor, int strata)
    implements SpreadPrior {
  /** Two strata in three differ from the level by a factor of at most 1.5. */
  static final double FACTOR = Math.log(1.5);

  /** Scale of the half-normal that the level has before any stratum. */
  static final double LEVEL_SCALE = 0.25;

  private static final int LEVELS = 33;
  private static final double LOWEST = 0.01;
  private static final double HIGHEST = 1.5;
  private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);
  private static final double HALF_LN_TWO_PI = Math.log(2 * Math.PI) / 2;

  /** Before any trial: levels even in their logarithms, weighted by the half-normal. */
  public static final LearnedSpread OF_EMPTY_LOG = ofEmptyLog();

  private static LearnedSpread ofEmptyLog() {
    HalfNormalSpread level = new HalfNormalSpread(LEVEL_SCALE);
    double[] levels = new double[LEVELS];
    double[] logWeights = new double[LEVELS];
    for (int k = 0; k < LEVELS; k++) {
      levels[k] = LOWEST * Math.pow(HIGHEST / LOWEST, (double) k / (LEVELS - 1));
      logWeights[k] = level.logDensity(levels[k]) + Math.log(levels[k]);
    }
    return of(levels, logWeights, 0);
  }

  private static LearnedSpread of(double[] levels, double[] logWeights, int strata) {
    double top = IntStream.range(0, levels.length).mapToDouble(k -> logWeights[k]).max().orElse(0);
    double[] weights =
        IntStream.range(0, levels.length).mapToDouble(k -> Math.exp(logWeights[k] - top)).toArray();
    double sum = IntStream.range(0, levels.length).mapToDouble(k -> weights[k]).sum();
    return new LearnedSpread(
        IntStream.range(0, levels.length).mapToObj(k -> levels[k]).toList(),
        IntStream.range(0, levels.length).mapToObj(k -> weights[k] / sum).toList(),
        FACTOR,
        strata);
  }

  public LearnedSpread {
    Invariant.positive("Factor between strata", lnFactor, "");
    levels = List.copyOf(levels);
    weights = List.copyOf(weights);
  }

  /**
   * What is known after one more stratum.
   *
   * @param fit of one event of it, made under any prior of ω
   * @param madeUnder that prior
   */
  public LearnedSpread after(ModelFit fit, SpreadPrior madeUnder) {
    double[] level = levels.stream().mapToDouble(l -> l).toArray();
    double[] logWeights = new double[level.length];
    for (int k = 0; k < level.length; k++) {
      int at = k;
      double evidence =
          fit.posterior()
              .meanOfSpread(o -> Math.exp(logDensity(o, level[at]) - madeUnder.logDensity(o)));
      logWeights[k] = Math.log(weights.get(k)) + Math.log(evidence);
    }
    return of(level, logWeights, strata + 1);
  }

  private double logDensity(double omega, double level) {
    double z = Math.log(omega / level) / lnFactor;
    return -z * z / 2 - HALF_LN_TWO_PI - Math.log(lnFactor * omega);
  }

  @Override
  public double logDensity(double omega) {
    double[] parts = parts(omega);
    double top = Arrays.stream(parts).max().orElseThrow();
    double sum = 0;
    for (double part : parts) {
      sum += Math.exp(part - top);
    }
    return top + Math.log(sum);
  }

  @Override
  public double slope(double omega) {
    return slopes(omega)[0];
  }

  @Override
  public double bend(double omega) {
    double[] slopes = slopes(omega);
    return slopes[1] - slopes[0] * slopes[0];
  }

  /** Logarithm of what each level adds to the density. */
  private double[] parts(double omega) {
    double[] parts = new double[levels.size()];
    Arrays.setAll(parts, k -> Math.log(weights.get(k)) + logDensity(omega, levels.get(k)));
    return parts;
  }

  /** First and second derivative of the density over the density. */
  private double[] slopes(double omega) {
    double[] parts = parts(omega);
    double top = Arrays.stream(parts).max().orElseThrow();
    double precision = 1 / (lnFactor * lnFactor);
    double sum = 0;
    double first = 0;
    double second = 0;
    for (int k = 0; k < parts.length; k++) {
      double density = Math.exp(parts[k] - top);
      double pull = 1 + precision * Math.log(omega / levels.get(k));
      double slope = -pull / omega;
      sum += density;
      first += density * slope;
      second += density * (slope * slope + (pull - precision) / (omega * omega));
    }
    return new double[] {first / sum, second / sum};
  }

  @Override
  public double quantile(double probability) {
    // The solver keeps state, so one for each call.
    return Math.exp(
        new BrentSolver(1e-9)
            .solve(
                200,
                ln -> below(ln) - probability,
                Math.log(LOWEST) - 9 * lnFactor,
                Math.log(HIGHEST) + 9 * lnFactor));
  }

  private double below(double lnOmega) {
    return IntStream.range(0, levels.size())
        .mapToDouble(
            k ->
                weights.get(k)
                    * STANDARD.cumulativeProbability(
                        (lnOmega - Math.log(levels.get(k))) / lnFactor))
        .sum();
  }

  @Override
  public double rootMeanSquare() {
    double square =
        IntStream.range(0, levels.size())
            .mapToDouble(k -> weights.get(k) * levels.get(k) * levels.get(k))
            .sum();
    return Math.exp(lnFactor * lnFactor) * Math.sqrt(square);
  }

  /** With levels so many times as high: boards that may differ so much more. */
  @Override
  public SpreadPrior widened(double factor) {
    return new LearnedSpread(
        levels.stream().map(level -> factor * level).toList(), weights, lnFactor, strata);
  }
}
