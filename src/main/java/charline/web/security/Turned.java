package charline.web.security;

/** A request that is not let in, or asks for what is not there: a status and one sentence. */
public final class Turned extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final int status;

  public Turned(int status, String sentence) {
    super(sentence);
    this.status = status;
  }

  public int status() {
    return status;
  }

  /** 404. */
  public static Turned notThere(String sentence) {
    return new Turned(404, sentence);
  }

  /** For letters that this server does not read. */
  public static Turned otherLetters() {
    return new Turned(415, "What is sent must be text in UTF-8; nothing was recorded.");
  }
}
