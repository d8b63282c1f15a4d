package charline.wording;

import charline.quantity.Figures;
import charline.trial.Upkeep;

/** What was done to a rig, in words and as JSON. */
public final class UpkeepText {
  private UpkeepText() {}

  /** "window-cleaned on 2026-06-01 at 412 h: it was burnt". */
  public static String words(Upkeep upkeep) {
    return "%s on %s%s%s"
        .formatted(
            upkeep.work(),
            upkeep.at().toLocalDate(),
            Figures.plain(upkeep.hours(), "h").map(" at "::concat).orElse(""),
            upkeep.note().map(": "::concat).orElse(""));
  }

  public static Json json(Upkeep upkeep) {
    return new Json()
        .put("at", upkeep.at().toString())
        .put("what", upkeep.work())
        .put("hours", upkeep.hours())
        .put("note", upkeep.note());
  }
}
