package charline.stat.inverse;

import charline.stat.interval.Bound;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;

/**
 * Walks outwards from an estimate until a profile drop passes a limit: the end of the connected
 * stretch of accepted values that holds the estimate.
 *
 * @param drop the drop at a value, quickly; may be too large where a search fell short
 * @param surestDrop the drop at a value, from many starts
 * @param limit the drop that is still accepted
 */
record ProfileCrossing(DoubleUnaryOperator drop, DoubleUnaryOperator surestDrop, double limit) {
  private static final double GROWTH = 1.5;

  /** Beyond this many first steps a bound is no answer to anybody. */
  private static final double FAR = 1e9;

  private static final double SURE = 1e-8;

  /**
   * The first value beyond the limit's reach.
   *
   * @param origin the estimate, where the drop is 0
   * @param firstStep above 0
   * @param direction -1 or 1
   */
  Bound from(double origin, double firstStep, int direction) {
    double before = origin;
    double here = origin;
    double dropBefore = 0;
    double dropHere = 0;
    for (double reach = firstStep; reach < FAR * firstStep; reach *= GROWTH) {
      double next = origin + direction * reach;
      double dropNext = drop.applyAsDouble(next);
      if (dropHere > dropBefore && dropHere > dropNext) {
        UnivariatePointValuePair peak = peak(before, here, next);
        if (peak.getValue() > limit) {
          Optional<Bound> found = crossing(before, peak.getPoint());
          if (found.isPresent()) {
            return found.get();
          }
        }
      }
      if (dropNext > limit) {
        Optional<Bound> found = crossing(here, next);
        if (found.isPresent()) {
          return found.get();
        }
        dropNext = drop.applyAsDouble(next); // on the better branch
      }
      before = here;
      dropBefore = dropHere;
      here = next;
      dropHere = dropNext;
    }
    return Bound.unbounded();
  }

  /**
   * The crossing between an accepted and a rejected value. Where many starts find a better branch,
   * the crossing moves outwards, or turns out to be none.
   */
  private Optional<Bound> crossing(double inside, double outside) {
    double from = inside;
    while (true) {
      double excessInside = drop.applyAsDouble(from) - limit;
      double excessOutside = drop.applyAsDouble(outside) - limit;
      if (excessOutside <= 0) {
        return Optional.empty();
      }
      double crossing = excessInside >= 0 ? from : root(from, excessInside, outside, excessOutside);
      boolean sure = surestDrop.applyAsDouble(crossing) >= limit - SURE;
      if (sure || crossing == from) {
        return Optional.of(Bound.at(crossing));
      }
      from = crossing;
    }
  }

  /** The ends keep the drops that they were bracketed with, even if a later search does better. */
  private double root(double inside, double excessInside, double outside, double excessOutside) {
    double accuracy = 1e-11 * Math.max(Math.abs(inside), Math.abs(outside));
    return new BrentSolver(1e-13, accuracy, 1e-12)
        .solve(
            500,
            x ->
                x == inside
                    ? excessInside
                    : x == outside ? excessOutside : drop.applyAsDouble(x) - limit,
            Math.min(inside, outside),
            Math.max(inside, outside));
  }

  private UnivariatePointValuePair peak(double before, double here, double next) {
    return new BrentOptimizer(1e-6, 1e-9)
        .optimize(
            new MaxEval(200),
            GoalType.MAXIMIZE,
            new UnivariateObjectiveFunction(drop::applyAsDouble),
            new SearchInterval(Math.min(before, next), Math.max(before, next), here));
  }
}
