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
  /** Rows of one value: the first few, as a slip is copied from patch to patch. */
  private static final int ROWS = 20;

  private static final class OfRig {
    private final UsualValues values;
    private final Map<Knob, Map<Double, List<SheetRow>>> rows = new EnumMap<>(Knob.class);

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
              List<SheetRow> rows =
                  own.rows
                      .computeIfAbsent(knob, k -> new HashMap<>())
                      .computeIfAbsent(value, v -> new ArrayList<>());
              if (rows.size() < ROWS) {
                rows.add(row);
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
                        own.rows
                            .getOrDefault(knob, Map.of())
                            .getOrDefault(value, List.of())
                            .forEach(row -> report(knob, value, doubt, row, doubts))));
  }

  private static void report(
      Knob knob, double value, Doubt doubt, SheetRow row, CellDoubts doubts) {
    if (knob.doubts(value).isEmpty()) {
      doubts.report(row, List.of(doubt));
    }
  }
}
