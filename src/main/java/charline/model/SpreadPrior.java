package charline.model;

import java.util.function.DoubleUnaryOperator;

/** Prior of ω, the spread between boards in ln dose. */
public sealed interface SpreadPrior permits HalfNormalSpread, LogNormalSpread, LearnedSpread {
  /** Natural logarithm of the density, which is a density of one. */
  double logDensity(double omega);

  /** First derivative of {@link #logDensity}. */
  double slope(double omega);

  /** Second derivative of {@link #logDensity}. */
  double bend(double omega);

  /** The spread with this probability below it, inside (0, 1). */
  double quantile(double probability);

  /** Square root of the mean square: the spread of a board's shift before any patch. */
  double rootMeanSquare();

  /** The same centre with a spread so many times as large. */
  SpreadPrior widened(double factor);

  /** {@link #logDensity} for where it is asked at every draw. */
  default DoubleUnaryOperator density() {
    return this::logDensity;
  }
}
