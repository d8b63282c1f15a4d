package charline.log;

import charline.log.database.Database;
import charline.refusal.Refusal;
import charline.trial.GivenName;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Records patches that a log does not have yet: all of those that come together, or none. */
record NewPatches(
    Database database,
    Stock stock,
    PatchTable patches,
    PlannedPatches planned,
    Supplier<OffsetDateTime> now) {
  /**
   * Works out what is written of them; gives what records them, which asks the log whatever there
   * is to ask before anything is written, once for all of them.
   *
   * @param recorder for whom the last is the last patch then; empty for those of a trial sheet
   */
  Runnable adding(List<PatchEntry> entries, Optional<String> recorder) {
    PatchTable.Rows rows =
        PatchTable.rows(
            entries.stream().map(PatchEntry::withoutBlankNotes).toList(), now.get(), recorder);
    return () -> add(entries, rows);
  }

  private void add(List<PatchEntry> entries, PatchTable.Rows rows) {
    database.inTransaction(
        () -> {
          stock.requireCount(entries.stream().map(e -> e.patch().board()).distinct().toList());
          requireFree(entries.stream().map(e -> e.patch().code()).toList());
          boolean plansLeft = planned.anyWithoutPatch();
          patches.add(rows);
          if (plansLeft) {
            entries.forEach(e -> planned.fulfil(e.patch().code(), e.patch().id()));
          }
          return null;
        });
  }

  private void requireFree(List<String> codes) {
    codes.forEach(code -> GivenName.requireSeenInLines("The code of a patch", code));
    List<String> known = patches.known(codes);
    codes.stream()
        .filter(code -> known.stream().anyMatch(code::equalsIgnoreCase))
        .findFirst()
        .ifPresent(
            code -> {
              throw Refusal.usage(
                  "Patch %s is in this log already; the next free code is %s."
                      .formatted(code, planned.nextCode()));
            });
  }
}
