package charline.trial;

import static charline.quantity.Figures.plain;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
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
  private static final double LEAST_OF_NOMINAL = 0.5;

  private static final double MOST_OF_NOMINAL = 1.2;

  private static final int EARLIEST_YEAR = 1990;

  private Plausibility() {}

  /**
   * One doubtful value. Each way into the program adds how its person says that the value is meant
   * as it stands.
   *
   * @param knob what it is about, null for no knob
   * @param finding what is doubtful about it
   * @param correction what to do if it is a slip
   * @param value of which of two readings the person must be sure; blank where there is one
   */
  public record Doubt(Knob knob, String finding, String correction, String value) {
    /** How to insist where a word is enough. */
    public static final String IN_WORDS = "say that you are sure";

    public Doubt(Knob knob, String finding) {
      this(knob, finding, "correct it", "");
    }

    public Doubt(Knob knob, String finding, String correction) {
      this(knob, finding, correction, "");
    }

    /** The sentence for a person who only has to say so. */
    public String sentence() {
      return sentence(IN_WORDS);
    }

    /**
     * The sentence for a person.
     *
     * @param sure how to insist, such as "add --sure"
     */
    public String sentence(String sure) {
      return "%s; %s, or %s%s."
          .formatted(finding, correction, sure, value.isEmpty() ? "" : " of " + value);
    }
  }

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
    if (isTooStrong(settings.power(), ratedWatts)) {
      doubts.add(
          new Doubt(
              Knob.POWER_W,
              "Power of %s W is more than a fifth above the rig's rating of %s W"
                  .formatted(plain(settings.power().value()), plain(ratedWatts))));
    }
    KnobValues.of(settings).forEach((knob, value) -> doubts.addAll(knob.doubts(value)));
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
    List<Doubt> doubts = new ArrayList<>(Knob.ratedPower(rig.emission()).doubts(rig.ratedWatts()));
    doubts.addAll(Knob.WAVELENGTH.doubts(rig.wavelengthNanometres()));
    KnobValues.usualOf(rig).forEach((knob, value) -> doubts.addAll(knob.doubts(value)));
    return List.copyOf(doubts);
  }

  /** Doubts about a metered power that is far from what the rig should give. */
  public static List<Doubt> about(PowerCheck check, Rig rig) {
    return isOfNominal(check.factor(rig.ratedWatts()))
        ? List.of()
        : List.of(
            new Doubt(
                Knob.METERED,
                "%s W at %s %% is %s %% of what %s should give"
                    .formatted(
                        plain(check.meteredWatts()),
                        plain(check.percent()),
                        plain(Math.round(1000 * check.factor(rig.ratedWatts())) / 10.0),
                        rig.name()),
                "check both numbers"));
  }

  /** Whether a power may well be delivered, as a factor of what the rating says. */
  public static boolean isOfNominal(double factor) {
    return factor >= LEAST_OF_NOMINAL && factor <= MOST_OF_NOMINAL;
  }

  /** Whether a power given in W is more than such a rig delivers. */
  public static boolean isTooStrong(PowerSetting power, double ratedWatts) {
    return power.unit() == PowerSetting.Unit.WATTS && power.value() > MOST_OF_NOMINAL * ratedWatts;
  }

  /** Doubts about what was seen. */
  public static List<Doubt> about(Reading reading) {
    List<Doubt> doubts = new ArrayList<>(Knob.PASSES.doubts(reading.passes()));
    addIfPresent(doubts, Knob.DEPTH, reading.depthMicrometres());
    return List.copyOf(doubts);
  }

  /** Doubts about a patch: what was dialled in, its size and what was seen. */
  public static List<Doubt> about(Patch patch) {
    List<Doubt> doubts =
        new ArrayList<>(about(patch.rig().emission(), patch.rig().ratedWatts(), patch.settings()));
    addIfPresent(doubts, Knob.PATCH_AREA, patch.areaSquareCentimetres());
    patch.readings().forEach(reading -> doubts.addAll(about(reading)));
    return List.copyOf(doubts);
  }

  /** Doubts about a board's moisture. */
  public static List<Doubt> about(Board board) {
    List<Doubt> doubts = new ArrayList<>();
    addIfPresent(doubts, Knob.MOISTURE, board.moisturePercent());
    return List.copyOf(doubts);
  }

  /** Doubts about the thickness of coats. */
  public static List<Doubt> about(Finish finish) {
    List<Doubt> doubts = new ArrayList<>();
    finish.coats().forEach(c -> addIfPresent(doubts, Knob.THICKNESS, c.thicknessMicrometres()));
    return List.copyOf(doubts);
  }

  /** A doubt about the year of a trial. */
  public static List<Doubt> aboutYear(int year, int thisYear) {
    return year >= EARLIEST_YEAR && year <= thisYear + 1
        ? List.of()
        : List.of(
            new Doubt(
                null,
                "The year %d is too early or too late for trials with these lasers"
                    .formatted(year)));
  }

  /**
   * A doubt about a power typed without its % sign: 0.6 can mean 0.6 % or 60 %, and one is a
   * hundred times the other. Above 1 there is none.
   *
   * @param text as typed, a number with or without the sign
   */
  public static List<Doubt> aboutTypedShare(String text) {
    double percent = Measure.parse(text, Quantity.SHARE).value();
    return text.strip().endsWith("%") || !isFraction(percent)
        ? List.of()
        : List.of(
            new Doubt(
                Knob.POWER_PCT,
                "Power of %s can mean %s %% or %s %%"
                    .formatted(plain(percent), plain(100 * percent), plain(percent)),
                "correct it",
                plain(percent) + " %"));
  }

  /** Whether a share typed without its % sign may have been meant as a fraction of 1. */
  public static boolean isFraction(double share) {
    return share > 0 && share <= 1;
  }

  private static void addIfPresent(List<Doubt> doubts, Knob knob, OptionalDouble value) {
    value.ifPresent(v -> doubts.addAll(knob.doubts(v)));
  }

  /** A doubt about a reading from before the burning, as a sheet may bring it. */
  public static List<Doubt> aboutJudging(OffsetDateTime burned, OffsetDateTime judged) {
    DateTimeFormatter minute = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");
    return Patch.isJudgedBefore(burned, judged)
        ? List.of(
            new Doubt(
                null,
                "The reading of %s is from before the burning on %s"
                    .formatted(minute.format(judged), minute.format(burned))))
        : List.of();
  }
}
