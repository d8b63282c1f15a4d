package charline.model;

import charline.quantity.Invariant;
import charline.stat.distribution.StandardNormal;

/**
 * A half-normal prior of the spread between boards, as a file of priors gives it.
 *
 * @param scale standard deviation of the normal before it is folded at 0, in ln dose
 */
public record HalfNormalSpread(double scale) implements SpreadPrior {
  private static final double LN_FOLDED = Math.log(2) - Math.log(2 * Math.PI) / 2;

  public HalfNormalSpread {
    Invariant.positive("Prior spread of boards", scale, "");
  }

  @Override
  public double logDensity(double omega) {
    double z = omega / scale;
    return LN_FOLDED - Math.log(scale) - z * z / 2;
  }

  @Override
  public double slope(double omega) {
    return -omega / (scale * scale);
  }

  @Override
  public double bend(double omega) {
    return -1 / (scale * scale);
  }

  @Override
  public double quantile(double probability) {
    return scale * StandardNormal.reachOfMiddle(probability);
  }

  @Override
  public double rootMeanSquare() {
    return scale;
  }

  @Override
  public SpreadPrior widened(double factor) {
    return new HalfNormalSpread(factor * scale);
  }
}
