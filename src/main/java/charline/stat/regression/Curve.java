package charline.stat.regression;

/** A curve with parameters, as seen by least squares. */
public interface Curve {

  /** Number of parameters, at least 1. */
  int parameters();

  /** Height at x. */
  double height(double x, double[] parameters);

  /** Slope of the height in each parameter. */
  double[] slopes(double x, double[] parameters);

  /** A rise that levels off, {@code b1 (1 - exp(-b2 x))}. */
  static Curve saturating() {
    return new Curve() {
      @Override
      public int parameters() {
        return 2;
      }

      @Override
      public double height(double x, double[] b) {
        return -b[0] * Math.expm1(-b[1] * x);
      }

      @Override
      public double[] slopes(double x, double[] b) {
        return new double[] {-Math.expm1(-b[1] * x), b[0] * x * Math.exp(-b[1] * x)};
      }
    };
  }
}
