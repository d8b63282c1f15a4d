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
 * @param plans planned patches added
 * @param photos photographs added
 * @param amended rows that both hold and that only the other log had amended since: now as there
 * @param settled rows that both had amended differently, now as was asked
 * @param notes what had to be done otherwise than asked, one sentence each: codes and names that
 *     were taken
 * @param conflicts what both logs hold differently and nobody has decided, one sentence each; it
 *     stays as it is here
 * @param damage what either log holds damaged and what was therefore left out, one sentence each
 */
public record Merged(
    int rigs,
    int boards,
    int finishes,
    int patches,
    int readings,
    int plans,
    int photos,
    int amended,
    int settled,
    List<String> notes,
    List<String> conflicts,
    List<String> damage) {
  public Merged {
    notes = List.copyOf(notes);
    conflicts = List.copyOf(conflicts);
    damage = List.copyOf(damage);
  }
}
