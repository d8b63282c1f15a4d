package charline.web.live;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the log holds at one moment, read once per change of it.
 *
 * @param edition counts readings of the log: the higher, the newer
 * @param state the state of the log that it was read in
 * @param rigs all rigs, by name
 * @param boards all boards, by name
 * @param finishes all finishes, by name
 * @param strata patches of each stratum, oldest first
 * @param last the patch recorded last
 */
public record Shelf(
    long edition,
    String state,
    List<Rig> rigs,
    List<Board> boards,
    List<Finish> finishes,
    Map<Stratum, List<Patch>> strata,
    Optional<PatchEntry> last) {

  static Shelf read(Logbook log, long edition, String state) {
    return new Shelf(
        edition,
        state,
        log.rigs(),
        log.boards(),
        log.finishes(),
        log.patches(Filter.ALL).stream()
            .map(PatchEntry::patch)
            .collect(Collectors.groupingBy(Stratum::of, LinkedHashMap::new, Collectors.toList())),
        log.lastPatch());
  }

  /** The rig of that name, if there is one. */
  public Optional<Rig> rig(String name) {
    return rigs.stream().filter(r -> r.name().equalsIgnoreCase(name)).findFirst();
  }

  /** The board of that name, if there is one. */
  public Optional<Board> board(String name) {
    return boards.stream().filter(b -> b.name().equalsIgnoreCase(name)).findFirst();
  }

  /** The finish of that name, if there is one. */
  public Optional<Finish> finish(String name) {
    return finishes.stream().filter(f -> f.name().equalsIgnoreCase(name)).findFirst();
  }
}
