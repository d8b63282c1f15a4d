package charline.log.sheet;

import charline.quantity.Measure.Quantity;
import charline.trial.Plausibility.Knob;
import java.util.Arrays;
import java.util.List;

/**
 * The columns of a trial sheet, in the order in which they are written. A number may carry a unit
 * of its own; without one it is in the unit that the heading names.
 */
enum Column {
  PATCH("patch"),
  BURNED_AT("burned_at"),
  RIG("rig"),
  BOARD("board"),
  WOOD("wood"),
  FINISH("finish"),
  FAMILY("family"),
  TONE("tone"),
  POWER_PCT("power_pct", "Power", "power", Quantity.SHARE, null),
  POWER_W("power_w", "Power", "power", Quantity.POWER, Knob.PULSED_POWER),
  REP_KHZ("rep_khz", "Repetition rate", "rep", Quantity.RATE, Knob.RATE),
  PULSE_NS("pulse_ns", "Pulse duration", "pulse", Quantity.PULSE_DURATION, Knob.PULSE),
  SPOT_MM("spot_mm", "Spot diameter", "spot", Quantity.LENGTH, Knob.SPOT),
  SCAN_MM_S("scan_mm_s", "Spot speed", "scan", Quantity.SPEED, Knob.SCAN),
  SPACING_MM("spacing_mm", "Line spacing", "spacing", Quantity.LENGTH, Knob.SPACING),
  WIDTH_MM("width_mm", "Scan width", "width", Quantity.LENGTH, Knob.WIDTH),
  HAND_MM_S("hand_mm_s", "Hand speed", "hand", Quantity.SPEED, Knob.HAND),
  AREA_CM2("area_cm2", "Marked area", "area", Quantity.AREA, Knob.AREA),
  SECONDS("seconds", "Time per pass", "seconds", Quantity.TIME, Knob.SECONDS),
  PASSES("passes"),
  OUTCOME("outcome"),
  SOOT("soot"),
  DEPTH_UM("depth_um", "Depth removed", null, Quantity.THICKNESS, Knob.DEPTH),
  BY("by"),
  NOTE("note"),
  /** Size of the patch. This column and those below are written only where the log has more. */
  PATCH_CM2("patch_cm2", "Patch size", "patch", Quantity.AREA, Knob.PATCH_AREA),
  FORM("form"),
  CONDITION("condition"),
  MOISTURE_PCT("moisture_pct", "Moisture", null, Quantity.SHARE, Knob.MOISTURE),
  JOB("job"),
  /** The stack, outermost first: {@code latex:pale:90um + primer::40um}. */
  COATS("coats"),
  /** When the first reading was judged, where that is not when the patch was burned. */
  READ_AT("read_at"),
  /** Who burned the patch, where that is not who judged it first. */
  BURNED_BY("burned_by"),
  /** The note on the patch as a whole. */
  PATCH_NOTE("patch_note");

  /** Columns that no sheet can do without. */
  static final List<Column> NEEDED = List.of(BURNED_AT, RIG, BOARD, PASSES, OUTCOME);

  /** Settings that later lines of a patch must repeat or leave empty. */
  static final List<Column> KNOBS =
      List.of(
          POWER_PCT,
          POWER_W,
          REP_KHZ,
          PULSE_NS,
          SPOT_MM,
          SCAN_MM_S,
          SPACING_MM,
          WIDTH_MM,
          HAND_MM_S,
          AREA_CM2,
          SECONDS,
          PATCH_CM2);

  private final String heading;
  private final String words;
  private final String knob;
  private final Quantity quantity;
  private final Knob limits;

  Column(String heading) {
    this(heading, heading, null, null, null);
  }

  Column(String heading, String words, String knob, Quantity quantity, Knob limits) {
    this.heading = heading;
    this.words = words;
    this.knob = knob;
    this.quantity = quantity;
    this.limits = limits;
  }

  String heading() {
    return heading;
  }

  /** What the number is, to start a sentence with. */
  String words() {
    return words;
  }

  /** Key in {@link charline.log.PatchEntry#typed()}, null where the log keeps no typed text. */
  String knob() {
    return knob;
  }

  /** Kind of number, null for text. */
  Quantity quantity() {
    return quantity;
  }

  /** True for what a person wrote in free words, where blanks and line breaks count. */
  boolean isProse() {
    return this == NOTE || this == PATCH_NOTE || this == CONDITION;
  }

  /** True for text that came from a person and could be taken for a formula. */
  boolean isPersonal() {
    return quantity == null && this != PASSES && this != OUTCOME && this != SOOT;
  }

  /** Where a doubt about a knob belongs, null for one about several columns together. */
  static Column ofDoubt(Knob knob) {
    if (knob == Knob.CONTINUOUS_POWER) {
      return POWER_W;
    }
    if (knob == Knob.PASSES) {
      return PASSES;
    }
    return Arrays.stream(values()).filter(c -> c.limits == knob).findFirst().orElse(null);
  }

  static List<String> headings() {
    return Arrays.stream(values()).map(Column::heading).toList();
  }
}
