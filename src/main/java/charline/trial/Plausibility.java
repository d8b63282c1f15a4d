package charline.trial;

import static charline.quantity.Figures.plain;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.exposure.TimedArea;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Catches slips of the pen: values so far from hand-held work that a point or a unit is probably
 * wrong. The limits are generous and forbid nothing; a person who is sure may enter what they like.
 *
 * <p>Source of every range: common practice, no published source.
 */
public final class Plausibility {
  /** Outside this share of the nominal power a slip is likelier than a laser (common practice). */
  private static final double LEAST_OF_NOMINAL = 0.4;

  private static final double MOST_OF_NOMINAL = 1.2;

  private Plausibility() {}

  /** What a doubt is about, with the widest range that passes unasked. */
  public enum Knob {
    PULSED_POWER("Power of a pulsed unit", "W", 5, 2000, "100 to 500"),
    CONTINUOUS_POWER("Power of a cw unit", "W", 50, 6000, "1000 to 3000"),
    RATE("Repetition rate", "kHz", 1, 2000, "10 to 100"),
    PULSE("Pulse duration", "ns", 0.5, 2000, "20 to 500"),
    SPOT("Spot diameter", "mm", 0.02, 20, "0.1 to 2"),
    SCAN("Spot speed", "mm/s", 10, 100_000, "2000 to 15000"),
    SPACING("Line spacing", "mm", 0.005, 10, "0.03 to 0.5"),
    WIDTH("Scan width", "mm", 1, 400, "10 to 100"),
    HAND("Hand speed", "mm/s", 0.5, 500, "5 to 60"),
    AREA("Marked area", "cm2", 0.1, 10_000, "5 to 100"),
    SECONDS("Time per pass", "s", 0.05, 3600, "1 to 60"),
    PASSES("Passes", "", 1, 50, "1 to 10"),
    DOSE("Dose of one pass", "J/cm2", 0.01, 1000, "1 to 40"),
    FLUENCE("Mean fluence", "J/cm2", 0.01, 100, "0.3 to 10"),
    IRRADIANCE("Mean irradiance", "W/cm2", 10, 1e7, "10000 to 1000000"),
    THICKNESS("Coat thickness", "um", 1, 5000, "20 to 200"),
    DEPTH("Depth removed", "um", 0, 5000, "5 to 200"),
    MOISTURE("Moisture", "%", 2, 60, "6 to 20"),
    PATCH_AREA("Patch size", "cm2", 0.2, 10_000, "5 to 60"),
    WAVELENGTH("Wavelength", "nm", 150, 12_000, "1060 to 1080");

    private final String words;
    private final String unit;
    private final double low;
    private final double high;
    private final String usual;

    Knob(String words, String unit, double low, double high, String usual) {
      this.words = words;
      this.unit = unit;
      this.low = low;
      this.high = high;
      this.usual = usual;
    }

    /** A doubt about a value in this knob's unit, or none if it lies in the range. */
    public List<Doubt> doubts(double value) {
      if (value >= low && value <= high) {
        return List.of();
      }
      String u = unit.isEmpty() ? "" : " " + unit;
      return List.of(
          new Doubt(
              this,
              "%s of %s%s is outside %s to %s%s (usual: %s); correct it, or say that you are sure."
                  .formatted(words, plain(value), u, plain(low), plain(high), u, usual)));
    }
  }

  /**
   * One doubtful value.
   *
   * @param knob what it is about
   * @param sentence for the person
   */
  public record Doubt(Knob knob, String sentence) {}

  /**
   * Doubts about what was dialled in. Dose and intensity are looked at only where every knob passes
   * alone: they would repeat the same slip.
   *
   * @param emission kind of source
   * @param ratedWatts the rig's rating
   * @param settings of one pass
   */
  public static List<Doubt> about(Emission emission, double ratedWatts, Settings settings) {
    List<Doubt> doubts = new ArrayList<>();
    if (settings.power().unit() == PowerSetting.Unit.WATTS) {
      doubts.addAll(aboutWatts(emission, ratedWatts, settings.power().value()));
    }
    settings
        .pulses()
        .ifPresent(
            p -> {
              doubts.addAll(Knob.RATE.doubts(p.repetitionKilohertz()));
              p.durationNanoseconds().ifPresent(ns -> doubts.addAll(Knob.PULSE.doubts(ns)));
            });
    doubts.addAll(Knob.SPOT.doubts(settings.spot().diameterMillimetres()));
    doubts.addAll(aboutForm(settings.form()));
    if (doubts.isEmpty()) {
      Exposure exposure =
          Exposure.of(emission, settings.power().deliveredWatts(ratedWatts, 1), settings);
      doubts.addAll(Knob.DOSE.doubts(exposure.doseJoulesPerCm2()));
      Knob intensity = emission == Emission.PULSED ? Knob.FLUENCE : Knob.IRRADIANCE;
      doubts.addAll(intensity.doubts(exposure.intensity()));
    }
    return List.copyOf(doubts);
  }

  /** Doubts about a rig's figures: rating, wavelength and whichever usual settings it has. */
  public static List<Doubt> about(Rig rig) {
    List<Doubt> doubts = new ArrayList<>(powerOf(rig.emission()).doubts(rig.ratedWatts()));
    doubts.addAll(Knob.WAVELENGTH.doubts(rig.wavelengthNanometres()));
    addIfPresent(doubts, Knob.SPOT, rig.spotMillimetres());
    addIfPresent(doubts, Knob.RATE, rig.repetitionKilohertz());
    addIfPresent(doubts, Knob.PULSE, rig.pulseNanoseconds());
    addIfPresent(doubts, Knob.WIDTH, rig.scanWidthMillimetres());
    return List.copyOf(doubts);
  }

  /** Doubts about a metered power that is far from what the rig should give. */
  public static List<Doubt> about(PowerCheck check, Rig rig) {
    double factor = check.factor(rig.ratedWatts());
    return factor >= LEAST_OF_NOMINAL && factor <= MOST_OF_NOMINAL
        ? List.of()
        : List.of(
            new Doubt(
                powerOf(rig.emission()),
                "%s W at %s %% is %s %% of what %s should give; check both numbers, or say that you are sure."
                    .formatted(
                        plain(check.meteredWatts()),
                        plain(check.percent()),
                        plain(Math.round(1000 * factor) / 10.0),
                        rig.name())));
  }

  /**
   * A doubt about a power typed without its % sign: 0.6 can mean 0.6 % or 60 %, and one is a
   * hundred times the other. Above 1 there is none.
   *
   * @param emission kind of source
   * @param percent as it would be taken
   */
  public static List<Doubt> aboutBareShare(Emission emission, double percent) {
    return isFraction(percent)
        ? List.of(
            new Doubt(
                powerOf(emission),
                "Power of %s can mean %s %% or %s %%; correct it, or say that you are sure of %s %%."
                    .formatted(
                        plain(percent), plain(100 * percent), plain(percent), plain(percent))))
        : List.of();
  }

  /** Whether a share typed without its % sign may have been meant as a fraction of 1. */
  public static boolean isFraction(double share) {
    return share > 0 && share <= 1;
  }

  private static List<Doubt> aboutWatts(Emission emission, double ratedWatts, double watts) {
    if (watts > MOST_OF_NOMINAL * ratedWatts) {
      return List.of(
          new Doubt(
              powerOf(emission),
              "Power of %s W is more than a fifth above the rig's rating of %s W; correct it, or say that you are sure."
                  .formatted(plain(watts), plain(ratedWatts))));
    }
    return List.of();
  }

  private static List<Doubt> aboutForm(DoseForm form) {
    List<Doubt> doubts = new ArrayList<>();
    if (form instanceof LineScan scan) {
      doubts.addAll(Knob.SCAN.doubts(scan.spotSpeedMillimetresPerSecond()));
      doubts.addAll(Knob.SPACING.doubts(scan.lineSpacingMillimetres()));
    } else if (form instanceof HandPass hand) {
      doubts.addAll(Knob.WIDTH.doubts(hand.scanWidthMillimetres()));
      doubts.addAll(Knob.HAND.doubts(hand.handSpeedMillimetresPerSecond()));
    } else if (form instanceof TimedArea timed) {
      doubts.addAll(Knob.AREA.doubts(timed.areaSquareCentimetres()));
      doubts.addAll(Knob.SECONDS.doubts(timed.secondsPerPass()));
    }
    return doubts;
  }

  private static Knob powerOf(Emission emission) {
    return emission == Emission.PULSED ? Knob.PULSED_POWER : Knob.CONTINUOUS_POWER;
  }

  private static void addIfPresent(List<Doubt> doubts, Knob knob, OptionalDouble value) {
    value.ifPresent(v -> doubts.addAll(knob.doubts(v)));
  }
}
