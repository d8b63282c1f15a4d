package charline.wording;

/** What every face says beside the cautions. */
public final class CautionText {
  /** Printed under every set of cautions. */
  public static final String DEFERRAL =
      "Local codes, the insurer and licensed trades come first. Nothing here replaces them.";

  private CautionText() {}
}
