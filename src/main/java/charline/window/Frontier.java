package charline.window;

import charline.model.DoseLimit;
import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * The ln dose per pass at which a promise stops holding with the asked confidence, against ln
 * intensity, for one number of passes. Quantiles of the posterior at a few knots, straight lines
 * between: the char frontier bends down between knots and the clearing frontier up, so the lines
 * err on the safe side.
 */
final class Frontier {
  private static final int KNOTS = 12;
  private static final double NARROWEST = 1e-6;

  private final PolynomialSplineFunction line;
  private final double low;
  private final double high;

  /**
   * @param limits the promise as several priors see it; below even odds the lowest dose counts,
   *     above them the highest, which is the cautious one either way
   */
  Frontier(List<DoseLimit> limits, double probability, double lnLow, double lnHigh, int passes) {
    low = lnLow;
    high = Math.max(lnHigh, lnLow + NARROWEST);
    double[] x = new double[KNOTS];
    double[] y = new double[KNOTS];
    for (int k = 0; k < KNOTS; k++) {
      x[k] = k == KNOTS - 1 ? high : low + (high - low) * k / (KNOTS - 1);
      double lnIntensity = x[k];
      DoubleStream doses =
          limits.stream().mapToDouble(l -> l.lnDose(probability, lnIntensity, passes));
      y[k] = (probability < 0.5 ? doses.min() : doses.max()).orElseThrow();
    }
    line = new LinearInterpolator().interpolate(x, y);
  }

  double lnDose(double lnIntensity) {
    return line.value(Math.max(low, Math.min(high, lnIntensity)));
  }
}
