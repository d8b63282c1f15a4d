package charline.web.live;

import charline.answer.Strata;
import charline.ask.Question;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Condition.Has;
import charline.log.search.Feature;
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
 * @param entries all patches that count, oldest first
 * @param trials patches by stratum, oldest first
 */
public record LogSnapshot(
    long edition,
    String state,
    List<Rig> rigs,
    List<Board> boards,
    List<Finish> finishes,
    List<PatchEntry> entries,
    Strata trials) {

  static LogSnapshot read(Logbook log, long edition, String state) {
    List<PatchEntry> entries = log.patches(Filter.ALL);
    return new LogSnapshot(
        edition,
        state,
        log.rigs(),
        log.boards(),
        log.finishes(),
        entries,
        new Strata(entries.stream().map(PatchEntry::patch).toList()));
  }

  /**
   * The patches that answer a question, in the order that it asks for. Void ones, which are asked
   * for seldom, are read from the log.
   */
  public List<PatchEntry> patches(Logbook log, Question question) {
    return question.condition().leaves().anyMatch(new Has(Feature.VOID)::equals)
        ? question.patches(log)
        : question.among(entries, log);
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
