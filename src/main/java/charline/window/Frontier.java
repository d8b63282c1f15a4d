package charline.window;

import charline.model.DoseLimit;
import java.util.List;
import java.util.function.DoubleFunction;
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
  private final double lnShift;

  private Frontier(PolynomialSplineFunction line, double low, double high, double lnShift) {
    this.line = line;
    this.low = low;
    this.high = high;
    this.lnShift = lnShift;
  }

  private Frontier(
      double lnLow, double lnHigh, DoubleFunction<DoubleStream> doses, boolean lowest) {
    low = lnLow;
    high = Math.max(lnHigh, lnLow + NARROWEST);
    double[] x = new double[KNOTS];
    double[] y = new double[KNOTS];
    for (int k = 0; k < KNOTS; k++) {
      x[k] = k == KNOTS - 1 ? high : low + (high - low) * k / (KNOTS - 1);
      DoubleStream seen = doses.apply(x[k]);
      y[k] = (lowest ? seen.min() : seen.max()).orElseThrow();
    }
    line = new LinearInterpolator().interpolate(x, y);
    lnShift = 0;
  }

  /**
   * The dose up to which a promise holds.
   *
   * @param limits the promise as several priors see it; the lowest dose is the cautious one
   */
  static Frontier below(
      List<DoseLimit> limits, double confidence, double lnLow, double lnHigh, int passes) {
    return new Frontier(lnLow, lnHigh, x -> doses(limits, 1 - confidence, x, passes), true);
  }

  /**
   * The dose from which on a promise holds.
   *
   * @param limits the promise as several priors see it; the highest dose is the cautious one
   */
  static Frontier above(
      List<DoseLimit> limits, double confidence, double lnLow, double lnHigh, int passes) {
    return new Frontier(lnLow, lnHigh, x -> doses(limits, confidence, x, passes), false);
  }

  private static DoubleStream doses(
      List<DoseLimit> limits, double probability, double lnIntensity, int passes) {
    return limits.stream().mapToDouble(l -> l.lnDose(probability, lnIntensity, passes));
  }

  /** The same line moved by so much ln dose. */
  Frontier shifted(double lnDose) {
    return new Frontier(line, low, high, lnShift + lnDose);
  }

  double lnDose(double lnIntensity) {
    return line.value(Math.max(low, Math.min(high, lnIntensity))) + lnShift;
  }
}
