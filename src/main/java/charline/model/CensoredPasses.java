package charline.model;

import charline.exposure.Exposure;
import charline.model.way.Way;
import charline.model.way.WayDesign;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.List;

/**
 * What one patch says of one event: it came after more than {@code passesWithout} passes and by
 * {@code passesWith}.
 *
 * @param lnDose natural logarithm of the dose per pass in J/cm²
 * @param lnIntensity natural logarithm of fluence (J/cm²) or irradiance (W/cm²)
 * @param board index of the board, from 0
 * @param passesWithout last passes without the event, 0 where the first reading shows it
 * @param passesWith first passes with the event, {@link #NEVER} where it was never seen
 * @param way values of the shifts, none where all patches were made in one way
 */
public record CensoredPasses(
    double lnDose, double lnIntensity, int board, int passesWithout, int passesWith, double[] way) {
  /** Passes of an event that was never seen. */
  public static final int NEVER = Integer.MAX_VALUE;

  /** A patch where all are made in one way. */
  public CensoredPasses(
      double lnDose, double lnIntensity, int board, int passesWithout, int passesWith) {
    this(lnDose, lnIntensity, board, passesWithout, passesWith, new double[0]);
  }

  static CensoredPasses of(
      Patch patch, int board, Event event, boolean acceptTint, WayDesign ways) {
    Exposure exposure = patch.exposure();
    List<Reading> readings = patch.readings();
    int without = 0;
    int with = NEVER;
    for (Reading reading : readings) {
      if (event.shownBy(reading.outcome(), acceptTint)) {
        with = reading.passes();
        break;
      }
      without = reading.passes();
    }
    return new CensoredPasses(
        Math.log(exposure.doseJoulesPerCm2()),
        Math.log(exposure.intensity()),
        board,
        without,
        with,
        ways.row(Way.of(patch)));
  }

  /** Whether the event was seen at all. */
  public boolean seen() {
    return passesWith != NEVER;
  }
}
