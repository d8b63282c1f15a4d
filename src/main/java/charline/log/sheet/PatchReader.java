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
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns the lines of one patch into an entry for the log; whatever is wrong goes to the faults. */
record PatchReader(
    Logbook log,
    Clock clock,
    TrialSheet sheet,
    Faults faults,
    KnobCells knobs,
    SheetStock stock,
    CellDoubts doubts) {
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
    List<Reading> readings = readings(rows, burned);
    if (faults.count() > before) {
      return Optional.empty();
    }
    Optional<String> by =
        sheet.hasColumn(BURNED_BY) ? SheetStock.text(first, BURNED_BY) : readings.get(0).by();
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
                readings),
            knobs.typed(first),
            by,
            SheetStock.text(first, PATCH_NOTE),
            Optional.empty()));
  }

  private List<Reading> readings(List<SheetRow> rows, Optional<OffsetDateTime> burned) {
    List<Reading> readings = new ArrayList<>();
    Optional<OffsetDateTime> last = burned;
    SheetRow earlier = null;
    for (SheetRow row : rows) {
      Optional<Reading> reading = reading(row, last, row == rows.get(0));
      burned.ifPresent(b -> reading.ifPresent(r -> doubtEarly(row, b, r)));
      if (reading.isPresent()) {
        Plausibility.about(reading.get(), readings)
            .forEach(d -> doubts.report(row, d.knob() == null ? OUTCOME : DEPTH_UM, List.of(d)));
        if (!readings.isEmpty()) {
          mustFollow(earlier, readings.get(readings.size() - 1), row, reading.get());
        }
        readings.add(reading.get());
        last = Optional.of(reading.get().at());
        earlier = row;
      }
    }
    return readings;
  }

  private void doubtEarly(SheetRow row, OffsetDateTime burned, Reading reading) {
    doubts.report(
        row,
        row.has(READ_AT) ? READ_AT : BURNED_AT,
        Plausibility.aboutJudging(burned, reading.at()));
  }

  private Optional<Reading> reading(SheetRow row, Optional<OffsetDateTime> last, boolean isFirst) {
    int before = faults.count();
    Optional<OffsetDateTime> at = last;
    if (row.has(READ_AT)) {
      at = moment(row, READ_AT);
    } else if (!isFirst && row.has(BURNED_AT)) {
      at = moment(row, BURNED_AT);
    }
    int passes = Readings.passes(row, faults);
    var outcome = Readings.outcome(row, faults);
    Optional<Boolean> soot = Readings.soot(row, faults);
    OptionalDouble depth = knobs.number(row, DEPTH_UM);
    if (faults.count() > before || at.isEmpty()) {
      return Optional.empty();
    }
    Reading reading =
        new Reading(
            log.newId(),
            passes,
            outcome.orElseThrow(),
            soot,
            depth,
            at.orElseThrow(),
            SheetStock.text(row, BY),
            SheetStock.text(row, NOTE));
    doubts.report(row, Plausibility.about(reading));
    return faults.count() > before ? Optional.empty() : Optional.of(reading);
  }

  private Optional<OffsetDateTime> burnedAt(SheetRow row) {
    if (!row.has(BURNED_AT)) {
      faults.add(row, BURNED_AT, "Give the time of burning, such as 2026-09-14.");
      return Optional.empty();
    }
    return moment(row, BURNED_AT);
  }

  private Optional<OffsetDateTime> moment(SheetRow row, Column column) {
    try {
      OffsetDateTime moment = SheetTimes.parse(row.text(column), clock.getZone(), sheet.dates());
      int thisYear = clock.instant().atZone(clock.getZone()).getYear();
      doubts.report(row, column, Plausibility.aboutYear(moment.getYear(), thisYear));
      return Optional.of(moment);
    } catch (Refusal e) {
      faults.add(row, column, e.getMessage());
      return Optional.empty();
    }
  }

  private void mustFollow(SheetRow earlierRow, Reading earlier, SheetRow row, Reading reading) {
    String code = row.text(PATCH);
    if (reading.passes() <= earlier.passes()) {
      faults.add(
          row,
          PASSES,
          "Passes on %s must rise down the sheet; line %d has %d already."
              .formatted(code, earlierRow.line(), earlier.passes()));
      return;
    }
    try {
      Patch.requireFollows(code, earlier, reading);
    } catch (Refusal e) {
      faults.add(row, OUTCOME, e.getMessage());
    }
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
