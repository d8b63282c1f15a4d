package charline.log.merge;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What joining another log brought in.
 *
 * @param woods woods added that somebody had added there
 * @param families coating families added, likewise
 * @param rigs rigs added
 * @param powers power checks added, and what they and amended rigs do to patches
 * @param upkeep upkeep added, by the name that its rig has here
 * @param boards boards added
 * @param finishes finishes added
 * @param samples results of samples added
 * @param patches patches added
 * @param newVoid those of them that came in void
 * @param readings readings added, those of added patches included
 * @param plans planned patches added, and what became of those that were here
 * @param photos photographs added
 * @param amended rows that both hold and that only the other log had amended since: now as there
 * @param voided those of them that are patches and void now
 * @param settled rows that both had amended differently, now as was asked
 * @param notes what had to be done otherwise than asked, one sentence each: codes and names that
 *     were taken
 * @param unresolved what both logs hold differently and nobody has decided; it stays as it is here
 * @param damage what either log holds damaged and what was therefore left out, one sentence each
 * @param twice what both logs set up under one name and agree in, left for the person to join
 * @param joined the same, joined as was asked
 */
public record Merged(
    int woods,
    int families,
    int rigs,
    Powers powers,
    Map<String, Integer> upkeep,
    int boards,
    int finishes,
    int samples,
    int patches,
    int newVoid,
    int readings,
    Plans plans,
    int photos,
    int amended,
    int voided,
    int settled,
    List<String> notes,
    List<Conflict> unresolved,
    List<String> damage,
    List<SetUpTwice> twice,
    List<SetUpTwice> joined) {
  /**
   * What the power on the work rests on.
   *
   * @param checks power checks added, by the name that their rig has here
   * @param patches patches of this log, void ones left out, whose power on the work is another than
   *     before
   */
  public record Powers(Map<String, Integer> checks, int patches) {
    public Powers {
      SortedMap<String, Integer> sorted = new TreeMap<>(checks);
      checks = Collections.unmodifiableSortedMap(sorted);
    }
  }

  /**
   * What was planned.
   *
   * @param added planned patches added
   * @param burned plans of this log that the other bench burned
   * @param givenUp plans of this log that the other bench gave up
   */
  public record Plans(int added, int burned, int givenUp) {}

  public Merged {
    SortedMap<String, Integer> byRig = new TreeMap<>(upkeep);
    upkeep = Collections.unmodifiableSortedMap(byRig);
    notes = List.copyOf(notes);
    unresolved = List.copyOf(unresolved);
    damage = List.copyOf(damage);
    twice = List.copyOf(twice);
    joined = List.copyOf(joined);
  }

  /** What both logs hold differently and nobody has decided, one sentence each. */
  public List<String> conflicts() {
    return unresolved.stream().map(Conflict::sentence).toList();
  }

  /** True if nothing came in, nothing was changed and nothing is left to say. */
  public boolean isEmpty() {
    return equals(
        new Merged(
            0,
            0,
            0,
            new Powers(Map.of(), 0),
            Map.of(),
            0,
            0,
            0,
            0,
            0,
            0,
            new Plans(0, 0, 0),
            0,
            0,
            0,
            0,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of()));
  }
}
