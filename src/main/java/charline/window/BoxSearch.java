package charline.window;

import java.util.Optional;

/**
 * Finds, for one number of passes, the box of power and speed that is largest in log-ranges among
 * all that keep both promises and stay within reach.
 *
 * <p>Risk and clearing rise with power and fall with speed in every draw, spot and rate being
 * fixed: dose and intensity are both in proportion to power, so ln risk dose rises by 1 + φ for
 * each unit of ln power, and φ is above -1 ({@link charline.model.Prior.Weight#OF_POWER}). So a box
 * keeps its promises when its hot corner (most power, least speed) keeps the char promise and its
 * cold corner (least power, most speed) the clearing promise. The region within reach is convex in
 * the logarithms, so four corners bound it too.
 */
final class BoxSearch {
  /** What a range is widened by before areas are compared, so that a line beats a point. */
  private static final double GRAIN = 0.01;

  private final double lnUnitDose;
  private final double[] power;
  private final double[] lnPower;
  private final double[] hottest;
  private final double[] coldest;
  private final double[] reachLow;
  private final double[] reachHigh;
  private final double[] borneOutHigh;
  private final double[] borneOutLow;

  /** A box in powers (percent) and ln speeds (mm/s). */
  record Found(double lowPower, double highPower, double lnLowSpeed, double lnHighSpeed) {
    double size() {
      return (Math.log(highPower / lowPower) + GRAIN) * (lnHighSpeed - lnLowSpeed + GRAIN);
    }
  }

  /** A power (percent) with an ln speed (mm/s). */
  record Point(double power, double lnSpeed) {}

  BoxSearch(
      RigSetup bench,
      TriedRegion reach,
      SupportingPatches witnesses,
      Frontier hot,
      Frontier cold,
      int passes) {
    lnUnitDose = Math.log(bench.unitDose());
    double lnUnitIntensity = Math.log(bench.unitIntensity());
    power =
        PowerDial.powers(
            bench.powerForIntensity(Math.exp(reach.lnLowestIntensity())),
            bench.powerForIntensity(Math.exp(reach.lnHighestIntensity())));
    int n = power.length;
    lnPower = new double[n];
    hottest = new double[n];
    coldest = new double[n];
    reachLow = new double[n];
    reachHigh = new double[n];
    borneOutHigh = new double[n];
    borneOutLow = new double[n];
    for (int i = 0; i < n; i++) {
      lnPower[i] = Math.log(power[i]);
      double lnIntensity = lnUnitIntensity + lnPower[i];
      Optional<Range> doses = reach.lnDoses(lnIntensity, passes);
      reachLow[i] = doses.map(Range::low).orElse(Double.POSITIVE_INFINITY);
      reachHigh[i] = doses.map(Range::high).orElse(Double.NEGATIVE_INFINITY);
      borneOutHigh[i] = witnesses.lnHottest(lnIntensity, bench.strokes().mostPasses(passes));
      borneOutLow[i] = witnesses.lnColdest(lnIntensity, passes);
      hottest[i] = hot.lnDose(lnIntensity);
      coldest[i] = cold.lnDose(lnIntensity);
    }
  }

  double[] powers() {
    return power.clone();
  }

  /** ln speed at which a power gives a dose. */
  private double lnSpeed(int i, double lnDose) {
    return lnUnitDose + lnPower[i] - lnDose;
  }

  /** Slowest ln speed that keeps the char promise, within reach and borne out, at a power. */
  double slowest(int i) {
    return lnSpeed(i, Math.min(Math.min(hottest[i], reachHigh[i]), borneOutHigh[i]));
  }

  /** Fastest ln speed that keeps the clearing promise, within reach and borne out, at a power. */
  double fastest(int i) {
    return lnSpeed(i, Math.max(Math.max(coldest[i], reachLow[i]), borneOutLow[i]));
  }

  /** Room between the two promises in ln dose, whatever was tried; negative where they collide. */
  double room(int i) {
    return hottest[i] - coldest[i];
  }

  /** The ln dose midway between the two promises, moved to within reach; empty if out of reach. */
  Optional<Double> middle(int i) {
    if (reachLow[i] > reachHigh[i]) {
      return Optional.empty();
    }
    double middle = (hottest[i] + coldest[i]) / 2;
    return Optional.of(Math.max(reachLow[i], Math.min(reachHigh[i], middle)));
  }

  Optional<Found> largest() {
    Found best = null;
    for (int hot = 0; hot < power.length; hot++) {
      for (int cold = 0; cold <= hot; cold++) {
        double from = Math.max(slowest(hot), lnSpeed(cold, reachHigh[cold]));
        double to = Math.min(fastest(cold), lnSpeed(hot, reachLow[hot]));
        if (from <= to) {
          Found found = new Found(power[cold], power[hot], from, to);
          if (best == null || found.size() > best.size()) {
            best = found;
          }
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /**
   * The point of a box with most margin on both sides: the middle of its speeds, so that the hand
   * may wander as far either way, at the power where both promises have the same room left.
   */
  Point start(Found box) {
    double lnSpeed = (box.lnLowSpeed() + box.lnHighSpeed()) / 2;
    int best = -1;
    for (int i = 0; i < power.length; i++) {
      if (power[i] >= box.lowPower()
          && power[i] <= box.highPower()
          && (best < 0 || margin(i, lnSpeed) > margin(best, lnSpeed))) {
        best = i;
      }
    }
    return new Point(power[best], lnSpeed);
  }

  private double margin(int i, double lnSpeed) {
    return Math.min(lnSpeed - slowest(i), fastest(i) - lnSpeed);
  }
}
