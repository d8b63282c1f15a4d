package charline.wording;

/** What every face says beside the cautions. */
public final class CautionText {
  /** Printed under every set of cautions. */
  public static final String DEFERRAL =
      "Local codes, the insurer and licensed trades come first. Nothing here replaces them.";

  private CautionText() {}

  /**
   * What must stand ready, and whose word comes first.
   *
   * @param what "patch" or "beam"
   */
  public static String before(String what) {
    return "Eyewear, extraction and a fire watch come before any %s. %s".formatted(what, DEFERRAL);
  }
}
