package charline.log;

import java.util.Map;
import java.util.regex.Pattern;

/**
 * What a person calls a column of the log, and how its values are written.
 *
 * @param name such as "hand speed"
 * @param unit text after a number, such as " mm/s"; empty where there is no unit
 * @param spelled words for values that are not stored as words
 */
public record ColumnWords(String name, String unit, Map<String, String> spelled) {
  private static final Map<String, ColumnWords> KNOWN =
      Map.ofEntries(
          known("power_pct", "power", " %"),
          known("power_w", "power on the work", " W"),
          known("spot_speed_mm_s", "spot speed", " mm/s"),
          known("line_spacing_mm", "line spacing", " mm"),
          known("scan_width_mm", "scan width", " mm"),
          known("hand_speed_mm_s", "hand speed", " mm/s"),
          known("timed_area_cm2", "timed area", " cm2"),
          known("seconds_per_pass", "time of a pass", " s"),
          known("spot_mm", "spot diameter", " mm"),
          known("spot_definition", "spot definition", ""),
          known("repetition_khz", "repetition rate", " kHz"),
          known("pulse_ns", "pulse duration", " ns"),
          known("patch_cm2", "patch size", " cm2"),
          known("rig_id", "rig", ""),
          known("board_id", "board", ""),
          known("finish_id", "finish", ""),
          known("depth_um", "depth", " µm"),
          yesOrNo("soot", "soot"),
          known("burned_by", "who burned it", ""),
          known("judged_by", "who judged it", ""),
          known("burned_at_utc", "time of burning", ""),
          known("burned_at_offset", "time zone of burning", ""),
          known("judged_at_utc", "time of judging", ""),
          known("judged_at_offset", "time zone of judging", ""),
          known("voided_why", "void", ""),
          known("reading.voided_why", "reason for striking a reading", ""),
          known("rated_w", "rated power", " W"),
          known("wavelength_nm", "wavelength", " nm"),
          known("setting_pct", "power setting", " %"),
          known("metered_w", "metered power", " W"),
          known("max_pulse_mj", "largest pulse energy", " mJ"),
          known("joined_into", "joined into", ""),
          known("thickness_um", "thickness", " µm"),
          known("metered_at_utc", "time of metering", ""),
          known("metered_at_offset", "time zone of metering", ""),
          known("moisture_pct", "moisture", " %"),
          known("taken_at_utc", "time of the photo", ""),
          known("taken_at_offset", "time zone of the photo", ""),
          known("like_wood", "like", ""),
          known("like_family", "like", ""),
          known("typed_json", "words typed", ""),
          known("called", "name of the coat", ""),
          known("figure", "scan figure", ""),
          known("lines_s", "lines per second", "/s"),
          known("standoff_mm", "stand-off", " mm"),
          known("defocus_mm", "defocus", " mm"),
          known("rest_s", "rest between passes", " s"),
          known("place", "place on the board", ""),
          known("wood_part", "part of the wood", ""),
          yesOrNo("wetted", "wetted"),
          yesOrNo("air", "air assist"),
          yesOrNo("extraction", "extraction"),
          known("temperature_c", "temperature", " °C"),
          known("strokes_s", "stroke times", " s"),
          known("stroke_mm", "stroke length", " mm"),
          known("focus_spot_mm", "spot diameter at focus", " mm"),
          known("beam_quality", "beam quality M2", ""),
          known("work", "what was done", ""),
          known("hours", "running hours", " h"),
          known("done_at_utc", "time of upkeep", ""),
          known("done_at_offset", "time zone of upkeep", ""),
          known("taken_on", "day of the sample", ""),
          known("tested_by", "who tested", ""),
          known("substance", "tested for", ""));

  private static final Pattern MOMENT =
      Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d.*(Z|[+-]\\d\\d:\\d\\d)");

  private static Map.Entry<String, ColumnWords> yesOrNo(String column, String name) {
    return Map.entry(column, new ColumnWords(name, "", Map.of("0", "no", "1", "yes")));
  }

  private static Map.Entry<String, ColumnWords> known(String column, String name, String unit) {
    return Map.entry(column, new ColumnWords(name, unit, Map.of()));
  }

  /** Words for "table.column"; a column without words of its own goes by its name. */
  public static ColumnWords of(String what) {
    String column = what.substring(what.indexOf('.') + 1);
    ColumnWords words = KNOWN.getOrDefault(what, KNOWN.get(column));
    return words != null ? words : new ColumnWords(column.replace('_', ' '), "", Map.of());
  }

  /** "2026-06-01 14:30" in the zone in which it was noted; with "UTC" where that is not known. */
  private static String minute(String stored) {
    String minute = stored.substring(0, 16).replace('T', ' ');
    return stored.endsWith("Z") ? minute + " UTC" : minute;
  }

  /** A value as a person writes it: without a tail of zeros, with its unit. */
  public String value(String stored) {
    if (name.startsWith("time of") && MOMENT.matcher(stored).matches()) {
      return minute(stored);
    }
    return spelled.getOrDefault(stored, stored.replaceFirst("^(-?\\d+)\\.0$", "$1") + unit);
  }
}
