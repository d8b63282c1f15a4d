package charline.log.sheet;

import charline.log.Logbook;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Plausibility.Doubt;
import charline.trial.Rig;
import charline.trial.UsualValues;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Values of a sheet that are far from what else their rig had, in the sheet and in the log. That is
 * known only when the whole sheet has been read; kept are the values, not the patches.
 */
final class Strays {
  /** Cells of one value: the first few, as a slip is copied from patch to patch. */
  private static final int CELLS = 20;

  private record Cell(int line, String text) {}

  private static final class OfRig {
    private final UsualValues values;
    private final Map<Knob, Map<Double, List<Cell>>> cells = new EnumMap<>(Knob.class);

    OfRig(UsualValues values) {
      this.values = values;
    }
  }

  private final Logbook log;
  private final Map<UUID, OfRig> byRig = new HashMap<>();

  Strays(Logbook log) {
    this.log = log;
  }

  /** Takes in a patch that the log does not know. */
  void take(Patch patch, SheetRow row) {
    Rig rig = patch.rig();
    OfRig own = byRig.computeIfAbsent(rig.id(), id -> new OfRig(log.usual(rig, patch)));
    own.values.add(patch);
    UsualValues.values(patch.settings(), patch.areaSquareCentimetres())
        .forEach(
            (knob, value) -> {
              List<Cell> cells =
                  own.cells
                      .computeIfAbsent(knob, k -> new HashMap<>())
                      .computeIfAbsent(value, v -> new ArrayList<>());
              if (cells.size() < CELLS) {
                cells.add(new Cell(row.line(), row.text(Column.of(knob))));
              }
            });
  }

  /** Reports those that stray and pass by themselves. */
  void report(CellDoubts doubts) {
    byRig.values().forEach(own -> report(own, doubts));
  }

  private static void report(OfRig own, CellDoubts doubts) {
    own.values
        .strays()
        .forEach(
            (knob, strays) ->
                strays.forEach(
                    (value, doubt) ->
                        own.cells
                            .getOrDefault(knob, Map.of())
                            .getOrDefault(value, List.of())
                            .forEach(cell -> report(knob, value, doubt, cell, doubts))));
  }

  private static void report(Knob knob, double value, Doubt doubt, Cell cell, CellDoubts doubts) {
    if (knob.doubts(value).isEmpty()) {
      doubts.report(cell.line(), Column.of(knob), cell.text(), doubt);
    }
  }
}
