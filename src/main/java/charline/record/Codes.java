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
  public static PatchEntry recorded(Logbook log, String typed, String person) {
    return isLast(typed)
        ? log.lastRecorded(person).orElseThrow(() -> none(log, person))
        : patch(log, typed, person);
  }

  /**
   * The patch meant by {@code last}, {@code P-0042}, {@code p42} or {@code 42}.
   *
   * @param person whose last patch is meant: one that they burned or recorded, never one that a
   *     merge or an import brought
   */
  public static PatchEntry patch(Logbook log, String typed, String person) {
    return isLast(typed)
        ? log.lastPatch(person).orElseThrow(() -> none(log, person))
        : log.patch(typed.strip());
  }

  private static boolean isLast(String typed) {
    return typed.strip().equalsIgnoreCase("last");
  }

  private static Refusal none(Logbook log, String person) {
    return log.hasPatches()
        ? Refusal.data(
            "There is no last patch of %s: what imports and merges brought is nobody's last; name the patch by its code."
                .formatted(person))
        : Refusal.data("There is no last patch: the log has no patches yet.");
  }
}
