package charline.trial;

import static java.lang.Math.atan2;
import static java.lang.Math.cos;
import static java.lang.Math.exp;
import static java.lang.Math.hypot;
import static java.lang.Math.pow;
import static java.lang.Math.sin;
import static java.lang.Math.sqrt;
import static java.lang.Math.toDegrees;
import static java.lang.Math.toRadians;

/**
 * The colour difference CIEDE2000: how far two colours look apart, for judging char and tint beside
 * bare wood by meter rather than by eye. About 1 is just noticed side by side (common practice, no
 * published source).
 *
 * <p>Follows Sharma, Wu and Dalal 2005, Color Research and Application 30:21-30, equations 2 to 22,
 * with their rules for hues on either side of 0° and for grey.
 */
public final class Ciede2000 {
  private static final double POW_25_7 = pow(25, 7);

  private Ciede2000() {}

  /** The difference, 0 or more; the same in either order. All weights kL, kC and kH are 1. */
  public static double between(Lab one, Lab other) {
    double meanChroma =
        (hypot(one.redness(), one.yellowness()) + hypot(other.redness(), other.yellowness())) / 2;
    double stretch = 1.5 - 0.5 * chromaShare(meanChroma);
    double a1 = stretch * one.redness();
    double a2 = stretch * other.redness();
    double chroma1 = hypot(a1, one.yellowness());
    double chroma2 = hypot(a2, other.yellowness());
    double hue1 = hueDegrees(a1, one.yellowness());
    double hue2 = hueDegrees(a2, other.yellowness());
    boolean grey = chroma1 * chroma2 == 0;

    double hueStep = grey ? 0 : shorterWay(hue2 - hue1);
    double hueMean = grey ? hue1 + hue2 : meanHue(hue1, hue2);
    double lightnessMean = (one.lightness() + other.lightness()) / 2;
    double chromaMean = (chroma1 + chroma2) / 2;

    double t =
        1
            - 0.17 * cos(toRadians(hueMean - 30))
            + 0.24 * cos(toRadians(2 * hueMean))
            + 0.32 * cos(toRadians(3 * hueMean + 6))
            - 0.20 * cos(toRadians(4 * hueMean - 63));
    double fromMiddle = (lightnessMean - 50) * (lightnessMean - 50);
    double lightness =
        (other.lightness() - one.lightness()) / (1 + 0.015 * fromMiddle / sqrt(20 + fromMiddle));
    double chroma = (chroma2 - chroma1) / (1 + 0.045 * chromaMean);
    double hue =
        2 * sqrt(chroma1 * chroma2) * sin(toRadians(hueStep / 2)) / (1 + 0.015 * chromaMean * t);
    double blueTurn = 30 * exp(-pow((hueMean - 275) / 25, 2));
    double rotation = -2 * chromaShare(chromaMean) * sin(toRadians(2 * blueTurn));
    return sqrt(lightness * lightness + chroma * chroma + hue * hue + rotation * chroma * hue);
  }

  private static double chromaShare(double chroma) {
    double seventh = pow(chroma, 7);
    return sqrt(seventh / (seventh + POW_25_7));
  }

  private static double hueDegrees(double a, double b) {
    double degrees = toDegrees(atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  private static double shorterWay(double step) {
    return step > 180 ? step - 360 : step < -180 ? step + 360 : step;
  }

  private static double meanHue(double one, double other) {
    double sum = one + other;
    if (Math.abs(one - other) <= 180) {
      return sum / 2;
    }
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }
}
