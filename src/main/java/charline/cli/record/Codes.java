package charline.cli.record;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Refused;

/** Patch codes as a person types them. */
final class Codes {
  private Codes() {}

  /** The patch meant by {@code last}, {@code P-0042}, {@code p42} or {@code 42}. */
  static PatchEntry patch(Logbook log, String typed) {
    String word = typed.strip();
    if (word.equalsIgnoreCase("last")) {
      return log.lastPatch()
          .orElseThrow(
              () ->
                  new Refused(
                      Refused.Kind.DATA, "There is no last patch: the log holds none yet."));
    }
    return log.patch(word);
  }
}
