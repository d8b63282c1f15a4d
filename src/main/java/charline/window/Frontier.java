package charline.window;

import charline.model.DoseLimit;
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

  /**
   * The dose below which so much of the posterior has its limit.
   *
   * @param probability for char what is not promised, for clearing what is
   */
  static Frontier of(DoseLimit limit, double probability, double lnLow, double lnHigh, int passes) {
    double high = Math.max(lnHigh, lnLow + NARROWEST);
    double[] x = new double[KNOTS];
    for (int k = 0; k < KNOTS; k++) {
      x[k] = k == KNOTS - 1 ? high : lnLow + (high - lnLow) * k / (KNOTS - 1);
    }
    double[] y = limit.lnDose(probability, x, passes);
    return new Frontier(new LinearInterpolator().interpolate(x, y), lnLow, high, 0);
  }

  /** The same line moved by so much ln dose. */
  Frontier shifted(double lnDose) {
    return new Frontier(line, low, high, lnShift + lnDose);
  }

  double lnDose(double lnIntensity) {
    return line.value(Math.max(low, Math.min(high, lnIntensity))) + lnShift;
  }
}
