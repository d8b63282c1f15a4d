package charline.cli.desk;

/** What was asked about is not in the log. The answer is no, in one sentence. */
public final class NothingThere extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public NothingThere(String sentence) {
    super(sentence);
  }
}
