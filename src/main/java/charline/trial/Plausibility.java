package charline.trial;

import static charline.quantity.Figures.plain;
import static charline.quantity.Figures.three;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.Figure;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;

/**
 * Catches slips of the pen: values so far from hand-held work that a point or a unit is probably
 * wrong. The limits are generous and forbid nothing; a person who is sure may enter what they like.
 *
 * <p>Source of every range: common practice, no published source.
 */
public final class Plausibility {

  /** No source gives more than its rating by more than this (common practice). */
  private static final double MOST_OF_FULL = 1.05;

  /** Closer than 3 % no meter repeats (common practice). */
  private static final double METER_SLACK = 1.03;

  private static final double ROUNDING = 1e-9;

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
   * @param rig the rig that they are dialled in on
   * @param settings of one pass
   * @param moment when; its power checks say what is delivered
   */
  public static List<Doubt> about(Rig rig, Settings settings, OffsetDateTime moment) {
    List<Doubt> doubts = new ArrayList<>(aboutPower(rig, settings, moment));
    KnobValues.of(settings).forEach((knob, value) -> doubts.addAll(knob.doubts(value)));
    if (doubts.isEmpty()) {
      double watts = rig.deliveredWatts(settings.power(), settings.pulses(), moment);
      Exposure exposure = Exposure.of(rig.emission(), watts, settings);
      doubts.addAll(Knob.DOSE.doubts(exposure.doseJoulesPerCm2()));
      Knob intensity = rig.emission() == Emission.PULSED ? Knob.FLUENCE : Knob.IRRADIANCE;
      doubts.addAll(intensity.doubts(exposure.intensity()));
    }
    return List.copyOf(doubts);
  }

  /** Doubts about more power than a rig gives, in all or in one pulse. */
  public static List<Doubt> aboutPower(Rig rig, Settings settings, OffsetDateTime moment) {
    PowerSetting power = settings.power();
    double full = Math.max(rig.ratedWatts(), rig.powerCurve(settings.pulses(), moment).watts(100));
    if (power.unit() == PowerSetting.Unit.WATTS && power.value() > MOST_OF_FULL * full) {
      return List.of(
          new Doubt(
              Knob.POWER_W,
              "Power of %s W is more than rig %s gives (%s W at 100 %%)"
                  .formatted(plain(power.value()), rig.name(), three(full))));
    }
    OptionalDouble most = rig.mostWatts(settings.pulses());
    double watts = rig.deliveredWatts(power, settings.pulses(), moment);
    return most.isPresent() && watts > METER_SLACK * most.getAsDouble()
        ? List.of(
            new Doubt(
                power.unit() == PowerSetting.Unit.WATTS ? Knob.POWER_W : Knob.POWER_PCT,
                "A pulse of %s mJ (%s W at %s kHz) is more than rig %s gives (%s mJ)"
                    .formatted(
                        three(watts / settings.pulses().orElseThrow().repetitionKilohertz()),
                        three(watts),
                        plain(settings.pulses().orElseThrow().repetitionKilohertz()),
                        rig.name(),
                        plain(rig.largestPulseMillijoules().getAsDouble())),
                "lower the power or raise the repetition rate"))
        : List.of();
  }

  /**
   * Doubts about how a pass was made: numbers that are far from usual, and lines so far apart that
   * they leave stripes.
   */
  public static List<Doubt> about(Circumstances circumstances, Settings settings) {
    List<Doubt> doubts = new ArrayList<>(aboutNumbers(circumstances));
    doubts.addAll(aboutLines(circumstances, settings));
    return List.copyOf(doubts);
  }

  /** A doubt about lines so far apart that they leave stripes. */
  public static List<Doubt> aboutLines(Circumstances circumstances, Settings settings) {
    List<Doubt> doubts = new ArrayList<>();
    double spot = settings.spot().oneOverESquaredMillimetres();
    circumstances
        .head()
        .lines(settings.form())
        .filter(lines -> lines.lineOverlap(settings.spot()) < -ROUNDING)
        .ifPresent(
            lines -> {
              boolean scanner = settings.form() == lines;
              doubts.add(
                  new Doubt(
                      scanner ? Knob.SPACING : Knob.HAND,
                      "Lines %s mm apart are farther apart than the spot is wide (%s mm), so that they leave stripes"
                          .formatted(three(lines.lineSpacingMillimetres()), three(spot)),
                      scanner
                          ? "give a spacing of %s mm or less".formatted(three(spot))
                          : "lower the hand speed or raise the lines per second"));
            });
    return List.copyOf(doubts);
  }

  private static List<Doubt> aboutNumbers(Circumstances circumstances) {
    List<Doubt> doubts = new ArrayList<>();
    circumstances
        .values()
        .forEach(
            (knob, value) -> {
              if (value instanceof Double number) {
                doubts.addAll(knob.doubts(number));
              }
            });
    return doubts;
  }

  /**
   * A doubt about a figure that has no name here: it may be mistyped, or a person's own word.
   *
   * @param used gives the figures that the log has already; asked only where it matters
   */
  public static List<Doubt> aboutFigure(
      Circumstances circumstances, Supplier<? extends Collection<String>> used) {
    return circumstances.head().figure().stream()
        .filter(figure -> !figure.isKnown() && !used.get().contains(figure.word()))
        .map(
            figure ->
                new Doubt(
                    Knob.FIGURE,
                    "Scan figure \"%s\" is none of %s"
                        .formatted(figure.word(), String.join(", ", Figure.words())),
                    "choose one of them"))
        .toList();
  }

  /** Doubts about a rig's figures: rating, wavelength and whichever usual settings it has. */
  public static List<Doubt> about(Rig rig) {
    List<Doubt> doubts = new ArrayList<>(Knob.ratedPower(rig.emission()).doubts(rig.ratedWatts()));
    doubts.addAll(Knob.WAVELENGTH.doubts(rig.wavelengthNanometres()));
    KnobValues.usualOf(rig).forEach((knob, value) -> doubts.addAll(knob.doubts(value)));
    doubts.addAll(aboutNumbers(rig.usual()));
    addIfPresent(doubts, Knob.FOCUS_SPOT, rig.optics().focusSpotMillimetres());
    addIfPresent(doubts, Knob.BEAM_QUALITY, rig.optics().beamQuality());
    return List.copyOf(doubts);
  }

  /** Doubts about what was seen. */
  public static List<Doubt> about(Reading reading) {
    List<Doubt> doubts = new ArrayList<>(Knob.PASSES.doubts(reading.passes()));
    addIfPresent(doubts, Knob.DEPTH, reading.depthMicrometres());
    return List.copyOf(doubts);
  }

  /**
   * Doubts about a reading after others of the same patch: more passes bring no finish back, and
   * take nothing less off.
   *
   * @param earlier readings before it, passes rising
   */
  public static List<Doubt> about(Reading reading, List<Reading> earlier) {
    List<Doubt> doubts = new ArrayList<>();
    if (!reading.outcome().cleared(false)) {
      earlier.stream()
          .filter(r -> r.outcome().cleared(false))
          .reduce((a, b) -> b)
          .ifPresent(
              cleared ->
                  doubts.add(
                      new Doubt(
                          null,
                          "%s after %s cannot well follow %s after %s, as more passes bring no finish back"
                              .formatted(
                                  capital(reading.outcome().text()),
                                  passes(reading),
                                  cleared.outcome().text(),
                                  passes(cleared)),
                          "correct the wrong one")));
    }
    OptionalDouble deepest =
        earlier.stream().flatMapToDouble(r -> r.depthMicrometres().stream()).max();
    if (reading.depthMicrometres().isPresent()
        && deepest.isPresent()
        && reading.depthMicrometres().getAsDouble() < deepest.getAsDouble()) {
      doubts.add(
          new Doubt(
              Knob.DEPTH,
              "Depth removed of %s um after %s is less than the %s um before"
                  .formatted(
                      plain(reading.depthMicrometres().getAsDouble()),
                      passes(reading),
                      plain(deepest.getAsDouble())),
              "correct the wrong one"));
    }
    return List.copyOf(doubts);
  }

  private static String passes(Reading reading) {
    return reading.passes() == 1 ? "1 pass" : reading.passes() + " passes";
  }

  private static String capital(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }

  /** Doubts about a patch: what was dialled in, its size and what was seen. */
  public static List<Doubt> about(Patch patch) {
    List<Doubt> doubts = new ArrayList<>(about(patch.rig(), patch.settings(), patch.burnedAt()));
    doubts.addAll(about(patch.circumstances(), patch.settings()));
    addIfPresent(doubts, Knob.PATCH_AREA, patch.areaSquareCentimetres());
    for (int i = 0; i < patch.readings().size(); i++) {
      doubts.addAll(about(patch.readings().get(i)));
      doubts.addAll(about(patch.readings().get(i), patch.readings().subList(0, i)));
    }
    if (doubts.stream().noneMatch(doubt -> doubt.knob() == Knob.DEPTH)) {
      // A depth that is doubted as it stands would repeat the same slip.
      DepthClash.of(patch).ifPresent(clash -> doubts.add(about(clash)));
    }
    return List.copyOf(doubts);
  }

  /** The doubt about a depth that does not go with the thickness of the coat. */
  public static Doubt about(DepthClash clash) {
    boolean gone = clash.kind() == DepthClash.Kind.GONE_TOO_SOON;
    String removed =
        clash.measured()
            ? "with %s um removed".formatted(plain(clash.depthMicrometres()))
            : "with no more than %s um removed at the pace measured before"
                .formatted(plain(Math.rint(clash.depthMicrometres())));
    return new Doubt(
        Knob.DEPTH,
        "After %s the finish is %s %s, but the coat is %s um thick"
            .formatted(
                clash.passes() == 1 ? "1 pass" : clash.passes() + " passes",
                gone ? "gone" : "left",
                removed,
                plain(clash.coatMicrometres())),
        "check the depth, the outcome and the coat's thickness");
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
