package charline.web.live;

import charline.answer.Strata;
import charline.log.Logbook;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the log holds at one moment, read once per change of it.
 *
 * @param edition counts readings of the log: the higher, the newer
 * @param state the state of the log that it was read in
 * @param rigs all rigs, by name
 * @param boards all boards, by name
 * @param finishes all finishes, by name
 * @param trials patches by stratum, oldest first
 */
public record LogSnapshot(
    long edition,
    String state,
    List<Rig> rigs,
    List<Board> boards,
    List<Finish> finishes,
    Strata trials) {

  static LogSnapshot read(Logbook log, long edition, String state) {
    return new LogSnapshot(
        edition, state, log.rigs(), log.boards(), log.finishes(), Strata.of(log));
  }

  /** Patches of each stratum, oldest first. */
  public Map<Stratum, List<Patch>> strata() {
    return trials.byStratum();
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
