package charline.log;

/**
 * Something that a check of the log turned up.
 *
 * @param kind how bad it is
 * @param text one sentence for the person
 */
public record Finding(Kind kind, String text) {
  /** How bad it is. */
  public enum Kind {
    /** The file is broken. */
    FAULT,
    /** A value that may have been mistyped. */
    DOUBT
  }
}
