package charline.log.sheet;

import charline.quantity.Measure.Quantity;
import charline.trial.Knob;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

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
  POWER_PCT(Knob.POWER_PCT),
  POWER_W(Knob.POWER_W),
  REP_KHZ(Knob.RATE),
  PULSE_NS(Knob.PULSE),
  SPOT_MM(Knob.SPOT),
  SCAN_MM_S(Knob.SCAN),
  SPACING_MM(Knob.SPACING),
  WIDTH_MM(Knob.WIDTH),
  HAND_MM_S(Knob.HAND),
  AREA_CM2(Knob.AREA),
  SECONDS(Knob.SECONDS),
  PASSES("passes"),
  OUTCOME("outcome"),
  SOOT("soot"),
  DEPTH_UM(Knob.DEPTH),
  BY("by"),
  NOTE("note"),
  /** Size of the patch. This column and those below are written only where the log has more. */
  PATCH_CM2(Knob.PATCH_AREA),
  FORM("form"),
  CONDITION("condition"),
  MOISTURE_PCT(Knob.MOISTURE),
  JOB("job"),
  /** The stack, outermost first: {@code latex:pale:90um + primer::40um}. */
  COATS("coats"),
  /** When the first reading was judged, where that is not when the patch was burned. */
  READ_AT("read_at"),
  /** Who burned the patch, where that is not who judged it first. */
  BURNED_BY("burned_by"),
  /** The note on the patch as a whole. */
  PATCH_NOTE("patch_note"),
  /** What a wood is like that somebody added: {@code bog oak=oak}. */
  WOOD_LIKE("wood_like"),
  /** What families are like that somebody added: {@code deck varnish=varnish}. */
  FAMILY_LIKE("family_like"),
  FIGURE(Knob.FIGURE),
  LINES_S(Knob.LINES),
  STANDOFF_MM(Knob.STAND_OFF),
  DEFOCUS_MM(Knob.DEFOCUS),
  REST_S(Knob.REST),
  PLACE(Knob.PLACE),
  WOOD_PART(Knob.WOOD_PART),
  WETTED(Knob.WETTED),
  AIR(Knob.AIR),
  EXTRACTION(Knob.EXTRACTION),
  TEMPERATURE_C(Knob.TEMPERATURE),
  /** Times of strokes, blanks between; the hand speed follows from them. */
  STROKES_S(Knob.STROKES),
  STROKE_MM(Knob.STROKE);

  private static final Map<Knob, Column> BY_KNOB =
      Arrays.stream(values())
          .filter(c -> c.knob != null)
          .collect(
              Collectors.toMap(
                  Column::knob, Function.identity(), (a, b) -> a, () -> new EnumMap<>(Knob.class)));

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

  /** How a pass was made, which later lines must repeat likewise. */
  static final List<Column> CIRCUMSTANCES = Knob.CIRCUMSTANCES.stream().map(Column::of).toList();

  private final String heading;
  private final Knob knob;

  Column(String heading) {
    this.heading = heading;
    this.knob = null;
  }

  Column(Knob knob) {
    this.heading = knob.column();
    this.knob = knob;
  }

  String heading() {
    return heading;
  }

  /** What the column holds of a pass, null for other text. */
  Knob knob() {
    return knob;
  }

  /** Key in {@link charline.log.PatchEntry#typed()}. */
  String key() {
    return knob.key();
  }

  /** What the number is, to start a sentence with. */
  String words() {
    return knob == null ? heading : knob.words();
  }

  /** Kind of number, null for text. */
  Quantity quantity() {
    return knob == null ? null : knob.quantity();
  }

  /** True for free text, where blanks and line breaks count. */
  boolean isProse() {
    return this == NOTE || this == PATCH_NOTE || this == CONDITION;
  }

  /** True for a number, with or without a unit. */
  boolean isNumber() {
    return knob != null && knob.isNumber();
  }

  /** True for text that came from a person and could be taken for a formula. */
  boolean isPersonal() {
    return !isNumber() && this != PASSES && this != OUTCOME && this != SOOT;
  }

  /** The column of a knob, null where a sheet has none for it. */
  static Column of(Knob knob) {
    return knob == Knob.PASSES ? PASSES : BY_KNOB.get(knob);
  }

  static List<String> headings() {
    return Arrays.stream(values()).map(Column::heading).toList();
  }
}
