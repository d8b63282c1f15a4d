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

  private final double[] power;
  private final double[] lnDoseAtUnitSpeed;
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

  /**
   * @param speeds hand or scan speeds that were tried; empty where none was, so that no speed is
   *     ruled out
   */
  BoxSearch(
      RigSetup bench,
      TriedRegion reach,
      Optional<Range> speeds,
      SupportingPatches witnesses,
      Frontier hot,
      Frontier cold,
      int passes) {
    power =
        PowerDial.powers(
            bench.powerForIntensity(Math.exp(reach.lnLowestIntensity())),
            Math.min(
                bench.highestPercent(),
                bench.powerForIntensity(Math.exp(reach.lnHighestIntensity()))));
    int n = power.length;
    lnDoseAtUnitSpeed = new double[n];
    hottest = new double[n];
    coldest = new double[n];
    reachLow = new double[n];
    reachHigh = new double[n];
    borneOutHigh = new double[n];
    borneOutLow = new double[n];
    for (int i = 0; i < n; i++) {
      lnDoseAtUnitSpeed[i] = Math.log(bench.doseAtUnitSpeed(power[i]));
      double lnIntensity = Math.log(bench.intensity(power[i]));
      Optional<Range> doses = reach.lnDoses(lnIntensity, passes);
      reachLow[i] = doses.map(Range::low).orElse(Double.POSITIVE_INFINITY);
      reachHigh[i] = doses.map(Range::high).orElse(Double.NEGATIVE_INFINITY);
      if (speeds.isPresent()) {
        reachLow[i] = Math.max(reachLow[i], lnDose(i, speeds.get().high()));
        reachHigh[i] = Math.min(reachHigh[i], lnDose(i, speeds.get().low()));
      }
      borneOutHigh[i] = witnesses.lnHottest(lnIntensity, bench.strokes().mostPasses(passes));
      borneOutLow[i] = witnesses.lnColdest(lnIntensity, passes);
      hottest[i] = hot.lnDose(lnIntensity);
      coldest[i] = cold.lnDose(lnIntensity);
    }
  }

  double[] powers() {
    return power.clone();
  }

  private double lnDose(int i, double speed) {
    return lnDoseAtUnitSpeed[i] - Math.log(speed);
  }

  /** ln speed at which a power gives a dose. */
  private double lnSpeed(int i, double lnDose) {
    return lnDoseAtUnitSpeed[i] - lnDose;
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

  /** True if some dose is within reach at a power. */
  boolean withinReach(int i) {
    return reachLow[i] <= reachHigh[i];
  }

  /**
   * How far above the clearing promise the hottest dose lies that keeps the char promise within
   * reach; negative infinity if none does.
   */
  double roomUnderChar(int i) {
    double hot = Math.min(Math.min(hottest[i], reachHigh[i]), borneOutHigh[i]);
    return hot >= reachLow[i] ? hot - coldest[i] : Double.NEGATIVE_INFINITY;
  }

  /** True if some dose within reach keeps the clearing promise. */
  boolean clears(int i) {
    return withinReach(i) && Math.max(coldest[i], borneOutLow[i]) <= reachHigh[i];
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
