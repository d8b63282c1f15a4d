package charline.log.sheet;

import static charline.log.sheet.Column.*;

import charline.exposure.Settings;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.KnobReader;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns the lines of one patch into an entry for the log; whatever is wrong goes to the faults. */
record PatchReader(
    Logbook log,
    TrialSheet sheet,
    Faults faults,
    KnobCells knobs,
    SheetStock stock,
    CellDoubts doubts,
    Moments moments,
    Readings readings) {
  /** Columns of which every line of a patch must say the same or nothing. */
  private static final List<Column> NAMES =
      List.of(
          RIG,
          BOARD,
          WOOD,
          FINISH,
          FAMILY,
          TONE,
          FORM,
          CONDITION,
          MOISTURE_PCT,
          JOB,
          COATS,
          BURNED_BY,
          PATCH_NOTE);

  /** The entry, with an empty code where the sheet gives none; nothing if there were faults. */
  Optional<PatchEntry> read(List<SheetRow> rows) {
    int before = faults.count();
    SheetRow first = rows.get(0);
    Optional<Rig> rig = stock.rig(first);
    Optional<Board> board = stock.board(first);
    Optional<Finish> finish = stock.finish(first);
    Optional<KnobReader.Result> pass = rig.map(r -> knobs.read(first, r));
    Optional<Settings> settings = pass.flatMap(KnobReader.Result::settings);
    OptionalDouble size = knobs.number(first, PATCH_CM2);
    Optional<OffsetDateTime> burned = burnedAt(first);
    if (settings.isPresent()) {
      Map<Column, Double> values =
          KnobCells.values(settings.get(), rig.get().spotDefinition(), size);
      rows.stream()
          .skip(1)
          .forEach(r -> mustAgree(first, r, values, pass.get().circumstances().values()));
      burned.ifPresent(
          at -> doubts.report(first, Plausibility.about(rig.get(), settings.get(), at)));
      doubts.report(first, Plausibility.about(pass.get().circumstances(), settings.get()));
      doubts.report(first, Plausibility.aboutFigure(pass.get().circumstances(), log::figures));
      size.ifPresent(cm2 -> doubts.report(first, Knob.PATCH_AREA.doubts(cm2)));
    }
    List<Reading> read = readings.of(rows, burned);
    if (faults.count() > before) {
      return Optional.empty();
    }
    Optional<String> by =
        sheet.hasColumn(BURNED_BY) ? SheetStock.text(first, BURNED_BY) : read.get(0).by();
    return Optional.of(
        new PatchEntry(
            new Patch(
                log.newId(),
                first.text(PATCH),
                burned.orElseThrow(),
                rig.orElseThrow(),
                board.orElseThrow(),
                finish.orElseThrow(),
                settings.orElseThrow(),
                pass.orElseThrow().circumstances(),
                size,
                read),
            knobs.typed(first),
            by,
            SheetStock.text(first, PATCH_NOTE),
            Optional.empty()));
  }

  private Optional<OffsetDateTime> burnedAt(SheetRow row) {
    if (!row.has(BURNED_AT)) {
      faults.add(row, BURNED_AT, "Give the time of burning, such as 2026-09-14.");
      return Optional.empty();
    }
    return moments.at(row, BURNED_AT);
  }

  private void mustAgree(
      SheetRow first, SheetRow row, Map<Column, Double> values, Map<Knob, Object> circumstances) {
    for (Column column : CIRCUMSTANCES) {
      if (row.has(column) && !says(row, column, circumstances.get(column.knob()))) {
        disagree(first, row, column, first.text(column));
      }
    }
    for (Column column : NAMES) {
      if (row.has(column) && !row.text(column).equalsIgnoreCase(first.text(column))) {
        disagree(first, row, column, first.text(column));
      }
    }
    for (Column column : KNOBS) {
      OptionalDouble value = knobs.number(row, column);
      if (value.isPresent()
          && !(values.containsKey(column)
              && SheetNumbers.same(values.get(column), value.getAsDouble()))) {
        String there =
            first.has(column) || !values.containsKey(column)
                ? first.text(column)
                : SheetNumbers.text(values.get(column));
        disagree(first, row, column, there);
      }
    }
  }

  private boolean says(SheetRow row, Column column, Object value) {
    try {
      return column.knob().read(row.text(column), knobs).equals(value);
    } catch (Refusal e) {
      faults.add(row, column, e.getMessage());
      return true; // said already
    }
  }

  private void disagree(SheetRow first, SheetRow row, Column column, String there) {
    faults.add(
        row,
        column,
        "All lines of %s must agree, and line %d has %s; give other settings their own patch code."
            .formatted(row.text(PATCH), first.line(), there.isEmpty() ? "nothing" : there));
  }
}
