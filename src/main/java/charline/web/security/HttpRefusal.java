package charline.web.security;

/** A request that is not let in, or asks for what is not there: a status and one sentence. */
public final class HttpRefusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final int status;

  public HttpRefusal(int status, String sentence) {
    super(sentence);
    this.status = status;
  }

  public int status() {
    return status;
  }

  /** 404. */
  public static HttpRefusal notThere(String sentence) {
    return new HttpRefusal(404, sentence);
  }

  /** For letters that this server does not read. */
  public static HttpRefusal otherLetters() {
    return new HttpRefusal(415, "A request must be text in UTF-8; nothing was recorded.");
  }
}
