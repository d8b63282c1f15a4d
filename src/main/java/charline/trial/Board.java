package charline.trial;

import charline.quantity.Invariant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * One piece of wood that patches are burned on.
 *
 * @param id permanent identity
 * @param name the person's name for it, unique in a log
 * @param wood a word of the log's vocabulary: a species or a generic wood
 * @param form solid, veneer, plywood or MDF
 * @param condition in the person's words, if given
 * @param moisturePercent meter reading, if taken
 * @param job what the board belongs to, if given
 */
public record Board(
    UUID id,
    String name,
    String wood,
    WoodForm form,
    Optional<String> condition,
    OptionalDouble moisturePercent,
    Optional<String> job) {
  public Board {
    condition = PlainText.prose(condition);
    job = PlainText.answer(job);
    moisturePercent.ifPresent(m -> Invariant.notNegative("Moisture", m, "%"));
  }
}
