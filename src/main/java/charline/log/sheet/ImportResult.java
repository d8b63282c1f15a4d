package charline.log.sheet;

/**
 * Result of an import, done or only checked.
 *
 * @param patches patches recorded
 * @param readings readings recorded with them
 * @param boards boards made
 * @param finishes finishes made
 * @param skipped patches passed over because the log has them with the same content
 */
public record ImportResult(int patches, int readings, int boards, int finishes, int skipped) {
  /** "24 patches with 96 readings, 4 new boards, 1 new finish; 2 patches were there already". */
  public String words() {
    return "%s with %s, %s, %s; %s there already"
        .formatted(
            count(patches, "patch", "patches"),
            count(readings, "reading", "readings"),
            count(boards, "new board", "new boards"),
            count(finishes, "new finish", "new finishes"),
            count(skipped, "patch was", "patches were"));
  }

  private static String count(int n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }
}
