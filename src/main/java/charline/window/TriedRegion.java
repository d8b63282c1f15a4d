package charline.window;

import charline.exposure.Exposure;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.correlation.Covariance;

/**
 * What was tried, in the terms of the models: natural logarithms of dose per pass, intensity and
 * passes of every reading. A setting is within reach if none of the three lies outside the trials
 * and its leverage, x' (X'X)^-1 x about the centre, is no larger than the largest of the trials.
 */
final class TriedRegion {
  /**
   * Spread that every direction is given at least, in ln units: closer than 3 % no hand and no dial
   * repeats a setting. It keeps the leverage defined where a knob was never moved.
   */
  private static final double FINEST = 0.03;

  private static final double SLACK = 1e-9;

  private final double[] low = {
    Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY
  };
  private final double[] high = {
    Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
  };
  private final double[] centre = new double[3];
  private final double[][] precision;
  private final double largestDistance;
  private final NavigableSet<Integer> passesTried = new TreeSet<>();

  TriedRegion(List<Patch> patches) {
    List<double[]> points = new ArrayList<>();
    for (Patch patch : patches) {
      Exposure exposure = patch.exposure();
      double lnDose = Math.log(exposure.doseJoulesPerCm2());
      for (Reading reading : patch.readings()) {
        points.add(
            new double[] {lnDose, Math.log(exposure.intensity()), Math.log(reading.passes())});
        passesTried.add(reading.passes());
      }
    }
    for (double[] point : points) {
      for (int k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], point[k]);
        high[k] = Math.max(high[k], point[k]);
        centre[k] += point[k] / points.size();
      }
    }
    precision = precision(points);
    largestDistance = points.stream().mapToDouble(this::distance).max().orElseThrow();
  }

  private static double[][] precision(List<double[]> points) {
    RealMatrix covariance =
        points.size() > 1
            ? new Covariance(points.toArray(double[][]::new), false).getCovarianceMatrix()
            : new Array2DRowRealMatrix(3, 3);
    for (int k = 0; k < 3; k++) {
      covariance.addToEntry(k, k, FINEST * FINEST);
    }
    return new LUDecomposition(covariance).getSolver().getInverse().getData();
  }

  /** Leverage up to the constants 1/N that all points share. */
  private double distance(double[] x) {
    double sum = 0;
    for (int r = 0; r < 3; r++) {
      for (int c = 0; c < 3; c++) {
        sum += precision[r][c] * (x[r] - centre[r]) * (x[c] - centre[c]);
      }
    }
    return sum;
  }

  /** The numbers of passes after which a patch was read; never empty. */
  NavigableSet<Integer> passesTried() {
    return Collections.unmodifiableNavigableSet(passesTried);
  }

  int mostPasses() {
    return passesTried.last();
  }

  int fewestPasses() {
    return passesTried.first();
  }

  double lnLowestIntensity() {
    return low[1];
  }

  double lnHighestIntensity() {
    return high[1];
  }

  double lnLowestDose() {
    return low[0];
  }

  double lnHighestDose() {
    return high[0];
  }

  boolean holds(double lnDose, double lnIntensity, int passes) {
    return lnDoses(lnIntensity, passes)
        .map(r -> lnDose >= r.low() - SLACK && lnDose <= r.high() + SLACK)
        .orElse(false);
  }

  /** The same with the 3 % that no dial repeats: a power check moves what was burned by less. */
  boolean nearlyHolds(double lnDose, double lnIntensity, int passes) {
    return sideOf(lnIntensity, 1) == 0
        && lnDoses(Math.max(low[1], Math.min(high[1], lnIntensity)), passes)
            .map(r -> lnDose >= r.low() - FINEST && lnDose <= r.high() + FINEST)
            .orElse(false);
  }

  /** 1 for a dose clearly above all that were tried, -1 for one clearly below, else 0. */
  int sideOfDoses(double lnDose) {
    return sideOf(lnDose, 0);
  }

  /** The same of an intensity. */
  int sideOfIntensities(double lnIntensity) {
    return sideOf(lnIntensity, 1);
  }

  private int sideOf(double value, int knob) {
    return value > high[knob] + FINEST ? 1 : value < low[knob] - FINEST ? -1 : 0;
  }

  /** The ln doses within reach at an intensity and a number of passes; empty if there are none. */
  Optional<Range> lnDoses(double lnIntensity, int passes) {
    double lnPasses = Math.log(passes);
    if (lnIntensity < low[1] - SLACK
        || lnIntensity > high[1] + SLACK
        || lnPasses < low[2] - SLACK
        || lnPasses > high[2] + SLACK) {
      return Optional.empty();
    }
    // The leverage is a quadratic in ln dose: a d² + 2 b d + c <= largest.
    double f = lnIntensity - centre[1];
    double l = lnPasses - centre[2];
    double a = precision[0][0];
    double b = precision[0][1] * f + precision[0][2] * l;
    double c = precision[1][1] * f * f + 2 * precision[1][2] * f * l + precision[2][2] * l * l;
    double discriminant = b * b - a * (c - largestDistance * (1 + SLACK));
    if (discriminant < 0) {
      return Optional.empty();
    }
    double root = Math.sqrt(discriminant);
    double from = Math.max(low[0], centre[0] + (-b - root) / a);
    double to = Math.min(high[0], centre[0] + (-b + root) / a);
    return from <= to ? Optional.of(new Range(from, to)) : Optional.empty();
  }
}
