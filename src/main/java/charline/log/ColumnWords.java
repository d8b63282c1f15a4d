package charline.log;

import java.util.Map;

/** What a person calls a column of the log, and the unit its numbers are in. */
record ColumnWords(String name, String unit) {
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
          known("burned_by", "burned by", ""),
          known("judged_by", "judged by", ""),
          known("burned_at_utc", "time of burning", ""),
          known("burned_at_offset", "time zone of burning", ""),
          known("judged_at_utc", "time of judging", ""),
          known("judged_at_offset", "time zone of judging", ""),
          known("voided_why", "void", ""),
          known("typed_json", "words typed", ""));

  private static Map.Entry<String, ColumnWords> known(String column, String name, String unit) {
    return Map.entry(column, new ColumnWords(name, unit));
  }

  /** Words for "table.column"; a column without words of its own goes by its name. */
  static ColumnWords of(String what) {
    String column = what.substring(what.indexOf('.') + 1);
    ColumnWords words = KNOWN.get(column);
    return words != null ? words : new ColumnWords(column.replace('_', ' '), "");
  }

  /** A value as a person writes it: without a tail of zeros, with its unit. */
  String value(String stored) {
    return stored.replaceFirst("^(-?\\d+)\\.0$", "$1") + unit;
  }
}
