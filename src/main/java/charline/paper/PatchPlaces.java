package charline.paper;

import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.TimedArea;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the trials fall on a bench's map. A patch sits at the power that gives the bench its
 * intensity and at the speed that then gives its dose; for a patch burned on this very bench that
 * is what was dialled in.
 *
 * @param places patches with a reading by the map's passes
 * @param readLater patches first read after more passes than the map is for
 * @param converted how many of {@code places} were burned with another rig, spot, rate or width
 */
record PatchPlaces(List<Place> places, int readLater, int converted) {
  private static final double SAME = 1e-6;

  /**
   * One patch on the map.
   *
   * @param patch the patch
   * @param reading its latest reading at or before the map's passes
   * @param powerPercent power on the bench's dial, may be above 100
   * @param speedMillimetresPerSecond speed on the bench's knob
   */
  record Place(
      Patch patch, Reading reading, double powerPercent, double speedMillimetresPerSecond) {}

  static PatchPlaces of(List<Patch> patches, RigSetup bench, int passes) {
    List<Place> places = new ArrayList<>();
    int readLater = 0;
    int converted = 0;
    for (Patch patch : patches) {
      Optional<Reading> reading =
          patch.readings().stream().filter(r -> r.passes() <= passes).reduce((a, b) -> b);
      if (reading.isEmpty()) {
        readLater++;
        continue;
      }
      places.add(place(patch, reading.get(), bench));
      converted += burnedLike(patch, bench) ? 0 : 1;
    }
    return new PatchPlaces(List.copyOf(places), readLater, converted);
  }

  private static Place place(Patch patch, Reading reading, RigSetup bench) {
    Exposure exposure = patch.exposure();
    double percent = bench.powerForIntensity(exposure.intensity());
    double areaRate = bench.watts(percent) / exposure.doseJoulesPerCm2();
    return new Place(patch, reading, percent, bench.speed().speedFor(areaRate));
  }

  private static boolean burnedLike(Patch patch, RigSetup bench) {
    return patch.rig().id().equals(bench.rig().id())
        && same(
            patch.settings().spot().oneOverESquaredMillimetres(),
            bench.spot().oneOverESquaredMillimetres())
        && same(
            patch.settings().pulses().map(p -> p.repetitionKilohertz()).orElse(1.0),
            bench.pulses().map(p -> p.repetitionKilohertz()).orElse(1.0))
        && same(acrossMillimetres(patch, bench.speed()), bench.speed().acrossMillimetres());
  }

  private static double acrossMillimetres(Patch patch, SpeedKnob knob) {
    if (patch.settings().form() instanceof HandPass hand && knob.kind() == SpeedKnob.Kind.HAND) {
      return hand.scanWidthMillimetres();
    }
    if (patch.settings().form() instanceof LineScan scan && knob.kind() == SpeedKnob.Kind.SCAN) {
      return scan.lineSpacingMillimetres();
    }
    // A timed area has no width of its own; a speed of the other kind has, but not the bench's.
    return patch.settings().form() instanceof TimedArea ? knob.acrossMillimetres() : 0;
  }

  private static boolean same(double a, double b) {
    return Math.abs(a - b) <= SAME * b;
  }
}
