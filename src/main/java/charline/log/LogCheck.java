package charline.log;

import charline.progress.WorkWatch;
import java.util.ArrayList;
import java.util.List;

/** Checks a log for damage and, if there is none, for values that may be mistyped. */
record LogCheck(
    Logbook log, PatchTable patches, History history, PhotoTable photos, WorkWatch progress) {
  /** To be called in a snapshot: all of it must be of one state of the log. */
  List<Finding> findings() {
    progress.at("Checking pages, rules and references", 0, 0);
    List<Finding> faults = new ArrayList<>(IntegrityCheck.faults(log.database()));
    progress.at("Checking photos", 0, 0);
    photos.altered().forEach(code -> faults.add(IntegrityCheck.alteredPhoto(code)));
    if (!faults.isEmpty()) {
      return faults;
    }
    progress.at("Checking values", 0, 0);
    requireReadable();
    return new Doubts(log.now()).of(log.rigs(), log.boards(), log.patches(Filter.ALL));
  }

  /** Reads what no analysis does, so that a row that cannot be read is found by a check. */
  private void requireReadable() {
    patches.voided();
    log.planned().all();
    log.samples().all();
    history.requireReadable();
    photos.requireReadable();
  }
}
