package charline.log;

import java.util.List;

/**
 * What joining another log brought in.
 *
 * @param rigs rigs added
 * @param boards boards added
 * @param finishes finishes added
 * @param patches patches added
 * @param readings readings added, those of added patches included
 * @param notes what had to be done otherwise than asked, one sentence each: codes and names that
 *     were taken, readings that did not fit
 */
public record Merged(
    int rigs, int boards, int finishes, int patches, int readings, List<String> notes) {
  public Merged {
    notes = List.copyOf(notes);
  }
}
