package charline.record;

import charline.exposure.Settings;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.KnobReader;
import charline.trial.Patch;
import charline.trial.Plausibility.Doubt;
import charline.trial.Reading;
import charline.trial.Rig;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * A patch to be recorded with its first reading: everything but its code.
 *
 * @param id its identity
 * @param rig what it was burned with
 * @param board what it was burned on
 * @param finish the coats
 * @param knobs settings, read without a problem
 * @param reading what was seen; the patch was burned when it was judged, and by the same person
 * @param note on the patch, if any
 * @param doubts further doubts about how it was typed
 */
public record PatchDraft(
    UUID id,
    Rig rig,
    Board board,
    Finish finish,
    KnobReader.Result knobs,
    Reading reading,
    Optional<String> note,
    List<Doubt> doubts) {
  Settings settings() {
    return knobs.orRefuse();
  }

  Map<String, String> typed() {
    return knobs.typed();
  }

  OptionalDouble size() {
    return knobs.size();
  }

  Patch patch(String code) {
    return new Patch(
        id,
        code,
        reading.at(),
        rig,
        board,
        finish,
        settings(),
        knobs.circumstances(),
        size(),
        List.of(reading));
  }
}
