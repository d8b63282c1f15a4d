package charline.refusal;

import java.util.Optional;

/**
 * The program does not do what was asked, and the user can put that right. The message is one
 * sentence: what must hold, what came, what to do. Every other exception is a fault of the program.
 */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What kind of fault it is, and so which exit code a command ends with. */
  public enum Kind {
    /** There is nothing of that kind in the log: the answer is no. */
    NOTHING_FOUND,
    /** What was asked makes no sense here: an unknown word, a number out of range, a taken name. */
    USAGE,
    /** The data or the file are not fit for what was asked. */
    DATA
  }

  private final Kind kind;
  private final Missing missing;

  private Refusal(Kind kind, String sentence, Throwable cause, Missing missing) {
    super(sentence, cause);
    this.kind = kind;
    this.missing = missing;
  }

  private Refusal(Kind kind, String sentence, Throwable cause) {
    this(kind, sentence, cause, null);
  }

  /** Nothing of what was asked about is in the log. */
  public static Refusal nothingFound(String sentence) {
    return new Refusal(Kind.NOTHING_FOUND, sentence, null);
  }

  /** The same where a face knows how what is lacking is brought about. */
  public static Refusal nothingFound(Missing what, String sentence) {
    return new Refusal(Kind.NOTHING_FOUND, sentence, null, what);
  }

  /** The request must be changed. */
  public static Refusal usage(String sentence) {
    return new Refusal(Kind.USAGE, sentence, null);
  }

  /** The same for a failure that something else caused. */
  public static Refusal usage(String sentence, Throwable cause) {
    return new Refusal(Kind.USAGE, sentence, cause);
  }

  /** The request must say something that it does not; each face knows where a person says it. */
  public static Refusal lacking(Missing what, String sentence) {
    return new Refusal(Kind.USAGE, sentence, null, what);
  }

  /** The data or the file must be changed. */
  public static Refusal data(String sentence) {
    return new Refusal(Kind.DATA, sentence, null);
  }

  /** The same where a face knows how a person says what is lacking. */
  public static Refusal data(Missing what, String sentence) {
    return new Refusal(Kind.DATA, sentence, null, what);
  }

  /** The same for a failure that something else caused. */
  public static Refusal data(String sentence, Throwable cause) {
    return new Refusal(Kind.DATA, sentence, cause);
  }

  /** The same fault in other words, for example with its line or option. */
  public Refusal reworded(String sentence) {
    return new Refusal(kind, sentence, this, missing);
  }

  public Kind kind() {
    return kind;
  }

  /** What the request does not say, where that is the fault. */
  public Optional<Missing> missing() {
    return Optional.ofNullable(missing);
  }
}
