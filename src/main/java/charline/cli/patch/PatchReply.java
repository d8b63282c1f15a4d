package charline.cli.patch;

import charline.answer.Precautions;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.util.Set;

/** The reply after recording a patch or a reading. */
final class PatchReply {
  /** Cautions that say not to do this at all; they come with every patch. */
  private static final Set<String> EVERY_TIME =
      Set.of("Continuous wave", "Chlorinated film", "Asbestos", "Preserved wood");

  /** Cautions that come once, with the first patch of a finish: the bench has no room for more. */
  private static final Set<String> AT_FIRST =
      Set.of("Lead", "Older coats", "Nitrocellulose", "Antifouling", "Chromate");

  private PatchReply() {}

  /** The code to write on the tape, what was recorded, and a caution where one fits. */
  static String recorded(PatchEntry entry, Logbook log) {
    Patch patch = entry.patch();
    Reading reading = patch.lastReading();
    String edge = "  +" + "-".repeat(patch.code().length() + 4) + "+\n";
    String sentence =
        "%s recorded: %s, %s: %s; %s."
            .formatted(
                patch.code(),
                SettingsText.settings(patch.settings()),
                SettingsText.passes(reading.passes()),
                SettingsText.dose(patch),
                reading.outcome().text());
    return edge
        + "  |  "
        + patch.code()
        + "  |  on %s, %s\n".formatted(patch.board().name(), what(patch))
        + edge
        + Table.paragraph(sentence)
        + "\n"
        + cautions(patch, log);
  }

  private static String what(Patch patch) {
    return "%s over %s".formatted(patch.finish().family(), patch.board().wood());
  }

  /** The reading just made, with the dose so far. */
  static String read(Patch patch, Reading reading) {
    double soFar = reading.passes() * patch.exposure().doseJoulesPerCm2();
    return Table.paragraph(
            "%s after %s, %s J/cm2 in all: %s."
                .formatted(
                    patch.code(),
                    SettingsText.passes(reading.passes()),
                    Figures.three(soFar),
                    reading.outcome().text()))
        + "\n";
  }

  private static String cautions(Patch patch, Logbook log) {
    boolean first = log.isFirstOfItsFinish(patch);
    Precautions known = Precautions.of(log, patch.finish(), patch.board(), patch.rig().emission());
    StringBuilder text = new StringBuilder();
    if (known.barred()) {
      Table.line(text, "Caution, no beam: " + NoBeamText.reason(known.bars()));
    }
    known.cautions().stream()
        .filter(c -> EVERY_TIME.contains(c.topic()) || first && AT_FIRST.contains(c.topic()))
        .forEach(c -> Table.line(text, PrecautionText.inBrief(c)));
    return text.toString();
  }
}
