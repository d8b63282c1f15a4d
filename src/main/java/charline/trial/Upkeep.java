package charline.trial;

import charline.quantity.Invariant;
import charline.refusal.Refusal;
import charline.trial.Plausibility.Doubt;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * What was done to a rig to keep it running. The rig may not be what it was before.
 *
 * @param id permanent identity
 * @param at when
 * @param work one of {@link #WORKS} or a person's own word, in lower case
 * @param hours that the source had run by then, 0 or more
 * @param note the person's words, if any
 */
public record Upkeep(
    UUID id, OffsetDateTime at, String work, OptionalDouble hours, Optional<String> note) {
  /** Upkeep that is common to rigs. */
  public static final List<String> WORKS =
      List.of("window-cleaned", "window-changed", "lens", "coolant", "service");

  private static final int LONGEST = 40;

  public Upkeep {
    work = work.strip().toLowerCase(Locale.ROOT);
    if (work.isEmpty()
        || work.length() > LONGEST
        || work.chars().anyMatch(Character::isISOControl)) {
      throw Refusal.usage(
          "Upkeep must be named in at most %d characters, such as %s; say what was done."
              .formatted(LONGEST, String.join(", ", WORKS)));
    }
    hours.ifPresent(h -> Invariant.notNegative("Running hours", h, "h"));
    note = PlainText.prose(note);
  }

  /** Doubts about work that is not common: it may be mistyped. */
  public List<Doubt> doubts() {
    return WORKS.contains(work)
        ? List.of()
        : List.of(
            new Doubt(
                null,
                "\"%s\" is none of %s".formatted(work, String.join(", ", WORKS)),
                "choose one of them"));
  }
}
