package charline.log.search;

import charline.log.PatchEntry;
import charline.trial.Knob;
import charline.trial.Reading;
import java.util.Optional;

/** What a patch has or has not. */
public enum Feature {
  /** Soot was wiped off, by some reading. */
  SOOT,
  /** A photo. */
  PHOTO,
  /** It was burned under a code that was planned. */
  PLANNED,
  /** It is void, or its board is. */
  VOID,
  /** A note, on the patch or a reading. */
  NOTE,
  WETTED,
  AIR,
  EXTRACTION;

  /**
   * Whether a patch has it.
   *
   * @throws IllegalStateException of what the patch itself does not tell
   */
  boolean of(PatchEntry entry) {
    return switch (this) {
      case SOOT -> entry.patch().readings().stream().anyMatch(r -> r.soot().orElse(Boolean.FALSE));
      case NOTE ->
          entry.note().isPresent()
              || entry.patch().readings().stream().map(Reading::note).anyMatch(Optional::isPresent);
      case WETTED -> is(entry, Knob.WETTED);
      case AIR -> is(entry, Knob.AIR);
      case EXTRACTION -> is(entry, Knob.EXTRACTION);
      case PHOTO, PLANNED, VOID -> throw new IllegalStateException("the log tells of " + this);
    };
  }

  private static boolean is(PatchEntry entry, Knob knob) {
    return Boolean.TRUE.equals(entry.patch().circumstances().values().get(knob));
  }
}
