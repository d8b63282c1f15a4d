package charline.model.classical;

import charline.stat.interval.Bound;
import charline.stat.interval.FiellerSet;
import charline.stat.interval.Interval;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Two limits, either of which the trials may leave open.
 *
 * @param low empty where there is no lower limit
 * @param high empty where there is no upper limit
 */
public record Limits(OptionalDouble low, OptionalDouble high) {
  static Limits of(Interval interval, DoubleUnaryOperator scale) {
    return new Limits(end(interval.lower(), scale), end(interval.upper(), scale));
  }

  static Limits between(double low, double high) {
    return new Limits(OptionalDouble.of(low), OptionalDouble.of(high));
  }

  /** The exponentials of Fieller's ends; both open where the set has no two finite ends. */
  static Limits ofLogs(FiellerSet set) {
    return set instanceof FiellerSet.Finite finite
        ? between(Math.exp(finite.lower()), Math.exp(finite.upper()))
        : new Limits(OptionalDouble.empty(), OptionalDouble.empty());
  }

  static OptionalDouble end(Bound bound, DoubleUnaryOperator scale) {
    return bound instanceof Bound.At at
        ? OptionalDouble.of(scale.applyAsDouble(at.value()))
        : OptionalDouble.empty();
  }

  /** Whether a value lies within. */
  public boolean hold(double value) {
    return value >= low.orElse(Double.NEGATIVE_INFINITY)
        && value <= high.orElse(Double.POSITIVE_INFINITY);
  }
}
