package charline.log;

/**
 * The log will not take or give something. The message is one sentence for the person: what must
 * hold, what came, what to do.
 */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Whose fault it is, and so which exit code a command ends with. */
  public enum Kind {
    /** What was asked makes no sense here: an unknown word, a name taken already. */
    USAGE,
    /** The data or the file will not bear it. */
    DATA
  }

  private final Kind kind;

  public Refused(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  public Refused(Kind kind, String message, Throwable cause) {
    super(message, cause);
    this.kind = kind;
  }

  public Kind kind() {
    return kind;
  }
}
