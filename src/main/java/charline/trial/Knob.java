package charline.trial;

import static charline.quantity.Figures.plain;

import charline.exposure.Emission;
import charline.exposure.Figure;
import charline.exposure.TimedStrokes;
import charline.quantity.Figures;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Plausibility.Doubt;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything that a person sets, measures or notes of a pass, with its names, and where it is a
 * number its unit and its limits: the one list that command line, page, trial sheet, log and check
 * of the log go by. Those past the numbers are words, or yes or no.
 *
 * <p>Each number has two ranges. Usual is what hand-held units are run at. Doubtful is outside the
 * widest range that an entry passes unasked: there a point or a unit has probably slipped. Source
 * of both: common practice, no published source.
 *
 * <p>One more thing to note of a pass takes a constant here with its column, unit, limits or
 * answers, in the list {@code CIRCUMSTANCES}; a component of {@code Conditions} or {@code Head} and
 * its two lines in {@code Circumstances}; a column of {@code patch} in a migration, in the trigger
 * of its changes and in {@code ColumnWords}; an option in {@code KnobOptions}; a {@code Column} of
 * the sheet; and its words in {@code CircumstancesText}. Log, sheet, merge, JSON and page follow
 * the list.
 */
public enum Knob {
  POWER_PCT("power", "power_pct", "Power", Quantity.SHARE, "5", Limit.PERCENT),
  POWER_W("power", "power_w", "Power", Quantity.POWER, "5", Limit.ABOVE_ZERO),
  SPOT("spot", "spot_mm", "Spot diameter", Quantity.LENGTH, "0.05", 0.02, 20, 0.1, 2),
  RATE("rep", "rep_khz", "Repetition rate", Quantity.RATE, "5", 1, 2000, 10, 100),
  PULSE("pulse", "pulse_ns", "Pulse duration", Quantity.PULSE_DURATION, "10", 0.5, 2000, 20, 500),
  HAND("hand", "hand_mm_s", "Hand speed", Quantity.SPEED, "1", 0.5, 500, 5, 60),
  WIDTH("width", "width_mm", "Scan width", Quantity.LENGTH, "5", 1, 400, 10, 100),
  SCAN("scan", "scan_mm_s", "Scan speed", Quantity.SPEED, "500", 10, 100_000, 500, 15_000),
  SPACING("spacing", "spacing_mm", "Line spacing", Quantity.LENGTH, "0.01", 0.005, 10, 0.03, 0.5),
  AREA("area", "area_cm2", "Marked area", Quantity.AREA, "5", 0.1, 10_000, 5, 100),
  SECONDS("seconds", "seconds", "Time per pass", Quantity.TIME, "0.5", 0.05, 3600, 1, 60),
  PATCH_AREA("patch", "patch_cm2", "Patch size", Quantity.AREA, "5", 0.2, 10_000, 5, 60),
  PASSES("passes", "passes", "Passes", null, "1", 1, 50, 1, 10),
  DEPTH("depth", "depth_um", "Depth removed", Quantity.THICKNESS, "5", 0, 5000, 0, 200),
  THICKNESS(
      "thickness", "thickness_um", "Coat thickness", Quantity.THICKNESS, "5", 1, 5000, 20, 200),
  MOISTURE("moisture", "moisture_pct", "Moisture", Quantity.SHARE, "1", 2, 60, 6, 20),
  WAVELENGTH(
      "wavelength",
      "wavelength_nm",
      "Wavelength",
      Quantity.WAVELENGTH,
      "1",
      150,
      12_000,
      355,
      10_600),
  PULSED_POWER("rated", "rated_w", "Power of a pulsed unit", Quantity.POWER, "5", 5, 2000, 50, 500),
  CONTINUOUS_POWER(
      "rated", "rated_w", "Power of a cw unit", Quantity.POWER, "5", 50, 6000, 200, 3000),
  METERED("metered", "metered_w", "Metered power", Quantity.POWER, "5", Limit.ABOVE_ZERO),
  DOSE("dose", "dose_j_cm2", "Dose of one pass", "J/cm2", 0.01, 1000, 1, 40),
  FLUENCE("fluence", "fluence_j_cm2", "Mean fluence", "J/cm2", 0.01, 100, 0.3, 10),
  IRRADIANCE(
      "irradiance", "irradiance_w_cm2", "Mean irradiance", "W/cm2", 10, 1e7, 10_000, 1_000_000),
  LINES("lines", "lines_s", "Lines or turns", Quantity.FREQUENCY, "10", 1, 2000, 50, 300),
  STAND_OFF("standoff", "standoff_mm", "Stand-off", Quantity.LENGTH, "10", 5, 2000, 100, 500),
  DEFOCUS("defocus", "defocus_mm", "Defocus", Quantity.LENGTH, "1", -200, 200, -20, 20),
  REST("rest", "rest_s", "Rest between passes", Quantity.TIME, "10", 0, 86_400, 0, 600),
  TEMPERATURE(
      "temperature",
      "temperature_c",
      "Temperature of the wood",
      Quantity.TEMPERATURE,
      "1",
      -20,
      60,
      0,
      40),
  STROKE("stroke-length", "stroke_mm", "Stroke length", Quantity.LENGTH, "50", 20, 5000, 100, 1000),
  FOCUS_SPOT(
      "focus-spot",
      "focus_spot_mm",
      "Spot diameter at focus",
      Quantity.LENGTH,
      "0.05",
      0.02,
      20,
      0.1,
      2),
  BEAM_QUALITY("beam-quality", "beam_quality", "Beam quality M2", null, "1", 1, 500, 1, 100),
  FIGURE("figure", "figure", "Scan figure"),
  PLACE("place", "place", "Place on the board", Place.words()),
  WOOD_PART("part", "wood_part", "Sapwood or heartwood", WoodPart.words()),
  WETTED("wetted", "wetted", "Wetted", Answers.YES_OR_NO),
  AIR("air", "air", "Air assist", Answers.YES_OR_NO),
  EXTRACTION("extraction", "extraction", "Extraction", Answers.YES_OR_NO),
  STROKES("strokes", "strokes_s", "Stroke times");

  /** The settings beside the power, in the order of a form. */
  public static final List<Knob> SETTINGS =
      List.of(HAND, WIDTH, SCAN, SPACING, AREA, SECONDS, SPOT, RATE, PULSE, PATCH_AREA);

  /** How a pass was made, beside its settings: all that may be left out, in the order of a form. */
  public static final List<Knob> CIRCUMSTANCES =
      List.of(
          FIGURE,
          LINES,
          STAND_OFF,
          DEFOCUS,
          REST,
          PLACE,
          WOOD_PART,
          WETTED,
          AIR,
          EXTRACTION,
          TEMPERATURE,
          STROKES,
          STROKE);

  /** Those of which a rig has usual values. */
  public static final List<Knob> USUAL_OF_RIG =
      List.of(FIGURE, LINES, STAND_OFF, DEFOCUS, AIR, EXTRACTION);

  /** How many times beyond the usual range a recorded value is asked about. */
  private static final double SLACK = 3;

  /** Wood that is neither frozen hard nor charring. */
  private static final double COLDEST = -60;

  private static final double HOTTEST = 150;

  private static final class Answers {
    static final List<String> YES_OR_NO = List.of("yes", "no");
  }

  private enum Limit {
    ABOVE_ZERO,
    ZERO_OR_MORE,
    PERCENT,
    EITHER_SIGN
  }

  private final String key;
  private final String column;
  private final String words;
  private final Quantity quantity;
  private final String unit;
  private final String step;
  private final Limit limit;
  private final Range usual;
  private final Range passing;
  private final List<String> answers;

  private record Range(double low, double high) {
    static final Range ANY = new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

    boolean has(double value) {
      return value >= low && value <= high;
    }

    Range widened(double factor) {
      return new Range(low < 0 ? low * factor : low / factor, high * factor);
    }
  }

  /** A number of which every value within its limits passes. */
  Knob(String key, String column, String words, Quantity quantity, String step, Limit limit) {
    this(key, column, words, quantity, quantity.base(), step, limit, Range.ANY, Range.ANY);
  }

  Knob(
      String key,
      String column,
      String words,
      Quantity quantity,
      String step,
      double low,
      double high,
      double usualLow,
      double usualHigh) {
    this(
        key,
        column,
        words,
        quantity,
        quantity == null ? "" : quantity.base(),
        step,
        quantity == Quantity.SHARE
            ? Limit.PERCENT
            : low < 0 ? Limit.EITHER_SIGN : low == 0 ? Limit.ZERO_OR_MORE : Limit.ABOVE_ZERO,
        new Range(low, high),
        new Range(usualLow, usualHigh));
  }

  /** What follows from other numbers and is typed by nobody. */
  Knob(
      String key,
      String column,
      String words,
      String unit,
      double low,
      double high,
      double usualLow,
      double usualHigh) {
    this(
        key,
        column,
        words,
        null,
        unit,
        "",
        Limit.ABOVE_ZERO,
        new Range(low, high),
        new Range(usualLow, usualHigh));
  }

  /** A word, one of these or a person's own where there are none. */
  Knob(String key, String column, String words, List<String> answers) {
    this(key, column, words, null, "", "", null, Range.ANY, Range.ANY, answers);
  }

  /** A word of a person's own. */
  Knob(String key, String column, String words) {
    this(key, column, words, List.of());
  }

  Knob(
      String key,
      String column,
      String words,
      Quantity quantity,
      String unit,
      String step,
      Limit limit,
      Range passing,
      Range usual) {
    this(key, column, words, quantity, unit, step, limit, passing, usual, List.of());
  }

  Knob(
      String key,
      String column,
      String words,
      Quantity quantity,
      String unit,
      String step,
      Limit limit,
      Range passing,
      Range usual,
      List<String> answers) {
    this.key = key;
    this.column = column;
    this.words = words;
    this.quantity = quantity;
    this.unit = unit;
    this.step = step;
    this.limit = limit;
    this.passing = passing;
    this.usual = usual;
    this.answers = answers;
  }

  /** Its name as an option, in forms, and in the log's record of what was typed. */
  public String key() {
    return key;
  }

  /** Its heading on a trial sheet, which names the unit. */
  public String column() {
    return column;
  }

  /** What it is, to start a sentence or a label with. */
  public String words() {
    return words;
  }

  /** What it is, within a sentence. */
  public String noun() {
    return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
  }

  /** True for a number, false for a word. */
  public boolean isNumber() {
    return limit != null;
  }

  /** True for what is yes or no. */
  public boolean isYesOrNo() {
    return answers == Answers.YES_OR_NO;
  }

  /** The words that it may be; empty for a number and where a person may use words of their own. */
  public List<String> answers() {
    return answers;
  }

  /**
   * What a text says: a number in this unit, a truth, or a word.
   *
   * @throws charline.refusal.Refusal in one sentence
   */
  public Object read(String text, KnobDialect dialect) {
    return switch (this) {
      case FIGURE -> Figure.ofWord(text).word();
      case PLACE -> Place.ofWord(text).word();
      case WOOD_PART -> WoodPart.ofWord(text).word();
      case STROKES -> TimedStrokes.text(TimedStrokes.times(text));
      default -> isYesOrNo() ? (Object) isYes(text) : (Object) dialect.number(this, text);
    };
  }

  private boolean isYes(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "yes", "y", "true" -> true;
      case "no", "n", "false" -> false;
      default -> throw Refusal.usage("%s must be yes or no, not \"%s\".".formatted(words, text));
    };
  }

  /** Kind of number; null for a count and for what nobody types. */
  public Quantity quantity() {
    return quantity;
  }

  /** Unit of a number given without one; blank for a count. */
  public String unit() {
    return unit;
  }

  /** The same as it is printed for people, with a raised 2. */
  public String printedUnit() {
    return Figures.typeset(unit);
  }

  /** What one tap on a step button adds. */
  public String step() {
    return step;
  }

  /**
   * The least value that steps lead to, where that may be 0 or below: the least of what is usual;
   * empty where it must be above 0.
   */
  public OptionalDouble least() {
    return limit == Limit.EITHER_SIGN || limit == Limit.ZERO_OR_MORE
        ? OptionalDouble.of(usual.low())
        : OptionalDouble.empty();
  }

  /**
   * The value if it can be one of this kind at all.
   *
   * @throws charline.refusal.Refusal "Hand speed must be above 0 mm/s, not -1 mm/s."
   */
  public double checked(double value) {
    if (this == TEMPERATURE) {
      return Invariant.within(words, value, COLDEST, HOTTEST, unit);
    }
    if (limit == Limit.EITHER_SIGN) {
      return value;
    }
    if (this == BEAM_QUALITY) {
      return Invariant.within(words, value, 1, 1e6, unit);
    }
    if (limit == Limit.ZERO_OR_MORE) {
      return Invariant.notNegative(words, value, unit);
    }
    if (this == MOISTURE) { // bone dry wood has none
      return Invariant.within(words, value, 0, 100, unit);
    }
    Invariant.positive(words, value, unit);
    return limit == Limit.PERCENT ? Invariant.within(words, value, 0, 100, unit) : value;
  }

  /** A doubt about a value to be entered, or none if it passes. */
  public List<Doubt> doubts(double value) {
    if (passing.has(value)) {
      return List.of();
    }
    String u = unit.isEmpty() ? "" : " " + unit;
    return List.of(
        new Doubt(
            this,
            "%s of %s%s is outside %s to %s%s (usual: %s)"
                .formatted(
                    words,
                    plain(value),
                    u,
                    plain(passing.low),
                    plain(passing.high),
                    u,
                    usually())));
  }

  /** The usual range as "5 to 60". */
  public String usually() {
    return plain(usual.low) + " to " + plain(usual.high);
  }

  /**
   * True if a recorded value is far from usual. That is stricter than {@link #doubts}, as it stops
   * nobody at the bench: a third of the lowest usual value and three times the highest pass, so
   * that a slipped decimal point is caught and an odd machine is not.
   */
  public boolean isFarFromUsual(double value) {
    return !usual.widened(SLACK).has(value);
  }

  /** The knob that holds what a rig is rated at. */
  public static Knob ratedPower(Emission emission) {
    return emission == Emission.PULSED ? PULSED_POWER : CONTINUOUS_POWER;
  }

  /** The knob of that name among those of a patch's settings; both powers are one name. */
  public static Optional<Knob> ofKey(String key) {
    for (Knob knob : values()) {
      if (knob.key.equals(key)) {
        return Optional.of(knob);
      }
    }
    return Optional.empty();
  }
}
