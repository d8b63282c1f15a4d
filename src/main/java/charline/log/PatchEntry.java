package charline.log;

import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.PlainText;
import java.util.Map;
import java.util.Optional;

/**
 * A patch as the log keeps it.
 *
 * @param patch the trial itself
 * @param typed what the person typed, by knob ("power" to "60%", "hand" to "1.2in/s"), so that the
 *     log shows it back as it came; knobs left to the rig's usual settings are absent
 * @param by who burned it, if noted
 * @param note the person's words, if any
 * @param voided why it was taken out, if it was
 */
public record PatchEntry(
    Patch patch,
    Map<String, String> typed,
    Optional<String> by,
    Optional<String> note,
    Optional<String> voided) {
  public PatchEntry {
    typed = TypedText.plain(typed);
    by = PlainText.answer(by);
    note = PlainText.prose(note);
    voided = voided.map(PlainText::of);
  }

  /** The same of another state of the patch. */
  public PatchEntry with(Patch other) {
    return new PatchEntry(other, typed, by, note, voided);
  }

  /** Not left to the constructor: logs of earlier versions may hold such notes. */
  PatchEntry withoutBlankNotes() {
    try {
      return with(patch.withoutBlankNotes());
    } catch (Refusal refusal) {
      throw Refusal.data(refusal.getMessage(), refusal);
    }
  }
}
