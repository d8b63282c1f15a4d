package charline.log.sheet;

import static charline.log.sheet.Column.*;

import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Reads readings cell by cell; wrong cells become faults. */
final class Readings {
  private static final Pattern COUNT = Pattern.compile("0*[1-9]\\d{0,8}");

  private final Logbook log;
  private final Faults faults;
  private final KnobCells knobs;
  private final CellDoubts doubts;
  private final Moments moments;
  private final CellMeanings<Outcome> outcomes = new CellMeanings<>();

  Readings(Logbook log, Faults faults, KnobCells knobs, CellDoubts doubts, Moments moments) {
    this.log = log;
    this.faults = faults;
    this.knobs = knobs;
    this.doubts = doubts;
    this.moments = moments;
  }

  /** The readings of a patch; those with faults are left out. */
  List<Reading> of(List<SheetRow> rows, Optional<OffsetDateTime> burned) {
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
      at = moments.at(row, READ_AT);
    } else if (!isFirst && row.has(BURNED_AT)) {
      at = moments.at(row, BURNED_AT);
    }
    int passes = passes(row);
    Optional<Outcome> outcome = outcome(row);
    Optional<Boolean> soot = soot(row);
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

  /** Passes so far, 0 if there was a fault. */
  private int passes(SheetRow row) {
    String text = row.text(PASSES);
    if (!COUNT.matcher(text).matches()) {
      faults.add(row, PASSES, "Passes must be a whole number, 1 or more.");
      return 0;
    }
    return Integer.parseInt(text);
  }

  private Optional<Outcome> outcome(SheetRow row) {
    try {
      return Optional.of(outcomes.of(OUTCOME, row.text(OUTCOME), Outcome::parse));
    } catch (Refusal e) {
      faults.add(row, OUTCOME, e.getMessage());
      return Optional.empty();
    }
  }

  private Optional<Boolean> soot(SheetRow row) {
    switch (row.text(SOOT).toLowerCase(Locale.ROOT)) {
      case "":
        return Optional.empty();
      case "yes":
        return Optional.of(true);
      case "no":
        return Optional.of(false);
      default:
        faults.add(row, SOOT, "Soot must be yes, no or empty.");
        return Optional.empty();
    }
  }
}
