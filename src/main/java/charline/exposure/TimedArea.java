package charline.exposure;

import charline.quantity.Invariant;

/**
 * A marked area gone over once in a timed pass.
 *
 * @param areaSquareCentimetres marked area, above 0
 * @param secondsPerPass time for one pass over it, above 0
 */
public record TimedArea(double areaSquareCentimetres, double secondsPerPass) implements DoseForm {
  public TimedArea {
    Invariant.positive("Area", areaSquareCentimetres, "cm2");
    Invariant.positive("Time per pass", secondsPerPass, "s");
  }

  @Override
  public AreaRate areaRate() {
    return new AreaRate(areaSquareCentimetres / secondsPerPass);
  }
}
