package charline.model;

import charline.quantity.Invariant;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * What a whole log says of the spread between boards in one more stratum: strata have a level of ω
 * in common, from which each differs by a factor, and the level is known as well as the other
 * strata show it. Given the level the prior is log-normal; over all levels it is a mixture.
 *
 * @param levels the prior at each level that may be, rising
 * @param weights what each weighs, adding up to 1
 * @param levelScale scale of the half-normal that the level had before any stratum
 * @param strata how many other strata the level was learned from, 0 or more
 */
public record LearnedSpread(
    List<LogNormalSpread> levels, List<Double> weights, double levelScale, int strata)
    implements SpreadPrior {
  private static final int LEVELS = 33;
  private static final double LOWEST = 0.01;
  private static final double HIGHEST = 1.5;

  /** Far out in the tails of the outermost levels, in standard deviations. */
  private static final double FAR = 9;

  /** Two strata in three differ from the level by a factor of at most 1.5. */
  private static final double LN_FACTOR = Math.log(1.5);

  private static final double LEVEL_SCALE = 0.25;

  /** Where no other stratum has anything to say. */
  public static final LearnedSpread OF_EMPTY_LOG = beforeAnyTrial(LEVEL_SCALE, LN_FACTOR);

  public LearnedSpread {
    Invariant.positive("Prior level of the spread of boards", levelScale, "");
    levels = List.copyOf(levels);
    weights = List.copyOf(weights);
  }

  /**
   * Before any trial: levels even in their logarithms, weighted by a half-normal.
   *
   * @param levelScale scale of the half-normal
   * @param lnFactor standard deviation of ln ω about the level
   */
  public static LearnedSpread beforeAnyTrial(double levelScale, double lnFactor) {
    HalfNormalSpread level = new HalfNormalSpread(levelScale);
    List<LogNormalSpread> levels =
        IntStream.range(0, LEVELS)
            .mapToObj(k -> LOWEST * Math.pow(HIGHEST / LOWEST, (double) k / (LEVELS - 1)))
            .map(median -> new LogNormalSpread(median, lnFactor))
            .toList();
    return weighted(
        levels,
        levels.stream().mapToDouble(l -> level.logDensity(l.median()) + Math.log(l.median())),
        levelScale,
        0);
  }

  private static LearnedSpread weighted(
      List<LogNormalSpread> levels, DoubleStream logWeights, double levelScale, int strata) {
    double[] weights = logWeights.toArray();
    double top = Arrays.stream(weights).max().orElseThrow();
    double sum = Arrays.stream(weights).map(w -> Math.exp(w - top)).sum();
    return new LearnedSpread(
        levels,
        Arrays.stream(weights).mapToObj(w -> Math.exp(w - top) / sum).toList(),
        levelScale,
        strata);
  }

  /**
   * What one event of a stratum says of the levels.
   *
   * @param lnChances ln of the chance of its trials under each level, levels rising, up to a
   *     constant
   */
  public record Evidence(List<Double> lnChances) {
    public Evidence {
      lnChances = List.copyOf(lnChances);
    }
  }

  /**
   * What a stratum says of these levels.
   *
   * @param fit of one event of it
   * @param madeUnder the prior of ω that it was made under
   */
  public Evidence evidence(ModelFit fit, SpreadPrior madeUnder) {
    double[] lnOmega = fit.posterior().ofSpread(Math::log);
    double[] before = fit.posterior().ofSpread(madeUnder.density());
    return new Evidence(
        levels.stream()
            .map(LogNormalSpread::logDensityOfLn)
            .map(
                level -> {
                  double[] ratio = new double[lnOmega.length];
                  Arrays.setAll(ratio, i -> Math.exp(level.applyAsDouble(lnOmega[i]) - before[i]));
                  return Math.log(fit.posterior().mean(ratio));
                })
            .toList());
  }

  /** What is known after one more stratum. */
  public LearnedSpread after(Evidence evidence) {
    return weighted(
        levels,
        IntStream.range(0, levels.size())
            .mapToDouble(k -> Math.log(weights.get(k)) + evidence.lnChances().get(k)),
        levelScale,
        strata + 1);
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

  /**
   * Levels are even in their logarithms, a step h apart, and as wide as each other, so that their
   * normals at x above the lowest are exp(-x²/2s²) exp(xh/s²)^k exp(-k²h²/2s²): one exponential and
   * a polynomial in place of one exponential a level.
   */
  @Override
  public DoubleUnaryOperator density() {
    double lnLowest = Math.log(levels.get(0).median());
    double step = levels.size() < 2 ? 0 : Math.log(levels.get(1).median()) - lnLowest;
    double precision = 1 / (lnFactor() * lnFactor());
    double[] share = new double[levels.size()];
    Arrays.setAll(share, k -> weights.get(k) * Math.exp(-step * step * k * k * precision / 2));
    double constant = -Math.log(2 * Math.PI) / 2 - Math.log(lnFactor());
    return omega -> {
      double lnOmega = Math.log(omega);
      double above = lnOmega - lnLowest;
      double ratio = Math.exp(above * step * precision);
      double sum = 0;
      for (int k = share.length - 1; k >= 0; k--) {
        sum = sum * ratio + share[k];
      }
      if (!(sum > 0 && sum < Double.MAX_VALUE)) {
        return logDensity(omega); // so far out that the powers leave the range of numbers
      }
      return constant - above * above * precision / 2 + Math.log(sum) - lnOmega;
    };
  }

  /** Logarithm of what each level adds to the density. */
  private double[] parts(double omega) {
    double[] parts = new double[levels.size()];
    Arrays.setAll(parts, k -> Math.log(weights.get(k)) + levels.get(k).logDensity(omega));
    return parts;
  }

  @Override
  public double slope(double omega) {
    return mean(omega, level -> level.slope(omega));
  }

  @Override
  public double bend(double omega) {
    double slope = slope(omega);
    return mean(omega, level -> level.bend(omega) + level.slope(omega) * level.slope(omega))
        - slope * slope;
  }

  /** Mean over the levels by what each adds to the density there. */
  private double mean(double omega, ToDoubleFunction<LogNormalSpread> of) {
    double[] parts = parts(omega);
    double top = Arrays.stream(parts).max().orElseThrow();
    double sum = 0;
    double total = 0;
    for (int k = 0; k < parts.length; k++) {
      double share = Math.exp(parts[k] - top);
      sum += share;
      total += share * of.applyAsDouble(levels.get(k));
    }
    return total / sum;
  }

  @Override
  public double quantile(double probability) {
    LogNormalSpread least = levels.get(0);
    LogNormalSpread most = levels.get(levels.size() - 1);
    return Math.exp(
        new BrentSolver(1e-9) // keeps state, so one for each call
            .solve(
                200,
                ln -> below(Math.exp(ln)) - probability,
                Math.log(least.median()) - FAR * least.lnFactor(),
                Math.log(most.median()) + FAR * most.lnFactor()));
  }

  private double below(double omega) {
    return IntStream.range(0, levels.size())
        .mapToDouble(k -> weights.get(k) * levels.get(k).below(omega))
        .sum();
  }

  @Override
  public double rootMeanSquare() {
    return Math.sqrt(
        IntStream.range(0, levels.size())
            .mapToDouble(k -> weights.get(k) * Math.pow(levels.get(k).rootMeanSquare(), 2))
            .sum());
  }

  /** With levels so many times as high: boards that may differ so much more. */
  @Override
  public SpreadPrior widened(double factor) {
    return new LearnedSpread(
        levels.stream()
            .map(level -> new LogNormalSpread(factor * level.median(), level.lnFactor()))
            .toList(),
        weights,
        factor * levelScale,
        strata);
  }

  /** Standard deviation of ln ω about the level. */
  public double lnFactor() {
    return levels.get(0).lnFactor();
  }

  /** The log-normal with the same median and the same 95 % quantile. */
  public LogNormalSpread asLogNormal() {
    return LogNormalSpread.through(quantile(0.5), quantile(0.95));
  }
}
