package charline.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Draws the map of power against speed over all that was tried and a margin around it. */
final class MapMaker {
  private static final int POWERS = 48;
  private static final int SPEEDS = 64;
  private static final double MARGIN = Math.log(1.1);

  /** A little above the dial, so that patches at full power lie inside the drawing. */
  private static final double TOP_PERCENT = 104;

  private MapMaker() {}

  /** The map for a number of passes; empty if the dial cannot reach what was tried. */
  static Optional<WindowMap> map(
      RigSetup bench,
      TriedRegion reach,
      TriedKnobs knobs,
      SupportingPatches witnesses,
      RiskBounds promises,
      int passes) {
    double lowPower = bench.powerForIntensity(Math.exp(reach.lnLowestIntensity() - MARGIN));
    double highPower =
        Math.min(
            TOP_PERCENT, bench.powerForIntensity(Math.exp(reach.lnHighestIntensity() + MARGIN)));
    if (lowPower >= highPower) {
      return Optional.empty();
    }
    // All that was tried lies between the slowest speed at low power and the fastest at high power.
    double slowest = bench.speedForDose(lowPower, Math.exp(reach.lnHighestDose()));
    double fastest = bench.speedForDose(highPower, Math.exp(reach.lnLowestDose()));
    Frontier hottest = promises.hottest(reach, passes);
    Frontier coldest = promises.coldest(reach, passes);
    Optional<Range> tried = knobs.speeds(bench.speed().kind());
    List<Double> powers = grid(lowPower, highPower, POWERS);
    List<Double> speeds = grid(slowest, fastest, SPEEDS);
    List<List<MapCell>> rows = new ArrayList<>();
    for (double power : powers) {
      double lnIntensity = Math.log(bench.intensity(power));
      double hot = hottest.lnDose(lnIntensity);
      double cold = coldest.lnDose(lnIntensity);
      double lnDoseAtUnitSpeed = Math.log(bench.doseAtUnitSpeed(power));
      List<MapCell> row = new ArrayList<>();
      for (double speed : speeds) {
        double lnDose = lnDoseAtUnitSpeed - Math.log(speed);
        row.add(
            new MapCell(
                power,
                speed,
                tried.map(range -> range.contains(speed)).orElse(true)
                    && reach.holds(lnDose, lnIntensity, passes)
                    && witnesses.bear(lnDose, lnIntensity, passes, bench.strokes()),
                witnesses.bearOut(lnDose, lnIntensity, passes, bench.strokes()),
                lnDose <= hot,
                lnDose >= cold));
      }
      rows.add(row);
    }
    return Optional.of(new WindowMap(passes, powers, speeds, rows));
  }

  private static List<Double> grid(double low, double high, int count) {
    List<Double> values = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      values.add(low * Math.pow(high / low, (double) k / (count - 1)));
    }
    return values;
  }
}
