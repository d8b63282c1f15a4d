package charline.trial;

import charline.quantity.Invariant;
import charline.refusal.Refusal;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * What was seen on a patch after a number of passes.
 *
 * @param id permanent identity
 * @param passes passes made so far, 1 or more
 * @param outcome what stays after cooling and wiping
 * @param soot whether soot was wiped off, if noted
 * @param depthMicrometres depth removed so far, if measured
 * @param at when it was judged
 * @param by who judged, if noted
 * @param note the person's words, if any
 */
public record Reading(
    UUID id,
    int passes,
    Outcome outcome,
    Optional<Boolean> soot,
    OptionalDouble depthMicrometres,
    OffsetDateTime at,
    Optional<String> by,
    Optional<String> note) {
  public Reading {
    by = PlainText.answer(by);
    note = note.map(PlainText::of);
    if (passes < 1) {
      throw Refusal.usage("Passes must be 1 or more, not " + passes + ".");
    }
    depthMicrometres.ifPresent(d -> Invariant.notNegative("Depth removed", d, "um"));
  }

  /** The same without a note of which nothing can be seen. */
  public Reading withoutBlankNote() {
    return PlainText.prose(note).equals(note)
        ? this
        : new Reading(id, passes, outcome, soot, depthMicrometres, at, by, Optional.empty());
  }
}
