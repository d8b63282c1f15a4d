package charline.record;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.refusal.Refusal;

/** Patch codes as a person types them. */
public final class Codes {
  private Codes() {}

  /**
   * As {@link #patch}, but {@code last} is the one recorded last even if it is void: whoever says
   * {@code last} twice does not mean two patches.
   */
  public static PatchEntry recorded(Logbook log, String typed) {
    return typed.strip().equalsIgnoreCase("last")
        ? log.lastRecorded().orElseThrow(Codes::none)
        : patch(log, typed);
  }

  /** The patch meant by {@code last}, {@code P-0042}, {@code p42} or {@code 42}. */
  public static PatchEntry patch(Logbook log, String typed) {
    String word = typed.strip();
    if (word.equalsIgnoreCase("last")) {
      return log.lastPatch().orElseThrow(Codes::none);
    }
    return log.patch(word);
  }

  private static Refusal none() {
    return Refusal.data("There is no last patch: the log has no patches yet.");
  }
}
