package charline.log.sheet;

import charline.log.Logbook;
import charline.quantity.Measure;
import charline.refusal.Refusal;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Upkeep of the rigs of a sheet: {@code rig,done_at,what,hours,note}.
 *
 * @param table its file
 * @param dates how its dates in figures begin
 */
record UpkeepSheet(TextTable table, DateOrder dates) {
  static final List<String> HEADINGS = List.of("rig", "done_at", "what", "hours", "note");
  private static final List<String> NEEDED = List.of("rig", "done_at", "what");

  static UpkeepSheet of(SheetText text, DateOrder dates) {
    return new UpkeepSheet(TextTable.read(text, HEADINGS, NEEDED), dates);
  }

  /**
   * The entries by the rig they are of.
   *
   * @param rigSheet name of the sheet of the rigs
   * @param named its rows
   * @param hint how a person says that they are sure of what looks like a slip; empty if they are
   */
  Map<String, List<Upkeep>> read(
      Logbook log,
      Clock clock,
      String rigSheet,
      Map<String, SheetRow> named,
      Optional<String> hint) {
    Map<String, List<Upkeep>> all = new HashMap<>();
    Faults faults = new Faults(table.name());
    for (SheetRow row : table.rows()) {
      if (RigCells.isOfNoRig(row, rigSheet, named, faults)) {
        continue;
      }
      try {
        String note = FormulaGuard.undo(row.cells().getOrDefault("note", ""));
        Upkeep done =
            new Upkeep(
                log.newId(),
                RigCells.need(
                    row, "done_at", t -> SheetTimes.parse(t, clock.getZone(), dates), faults),
                FormulaGuard.undo(RigCells.cell(row, "what")),
                RigCells.cell(row, "hours").isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(RigCells.need(row, "hours", Measure::plainNumber, faults)),
                Optional.of(note));
        new CellDoubts(faults, hint).report(row.line(), done.doubts());
        all.computeIfAbsent(RigCells.key(RigCells.name(row)), k -> new ArrayList<>()).add(done);
      } catch (RigCells.BadCell e) {
        // reported to the faults where it was found
      } catch (Refusal e) {
        faults.add(row.line(), e.getMessage());
      }
    }
    faults.refuseIfAny();
    return all;
  }

  /** Adds those that a known rig has not yet, and counts them. */
  static int addNew(Rig rig, List<Upkeep> all, Logbook log, String by) {
    List<Upkeep> fresh =
        all.stream()
            .filter(
                upkeep ->
                    rig.upkeep().stream()
                        .noneMatch(
                            u -> u.at().isEqual(upkeep.at()) && u.work().equals(upkeep.work())))
            .toList();
    fresh.forEach(upkeep -> log.rigEntries().addUpkeep(rig.name(), upkeep, by));
    return fresh.size();
  }
}
