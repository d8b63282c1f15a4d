package charline.log.sheet;

import charline.log.Logbook;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Power checks of the rigs of a sheet: {@code rig,checked_at,power_pct,metered_w,rep_khz,pulse_ns}.
 *
 * @param table their file
 * @param dates how its dates in figures begin
 */
record PowerCheckSheet(TextTable table, DateOrder dates) {
  static final List<String> HEADINGS =
      List.of("rig", "checked_at", "power_pct", "metered_w", "rep_khz", "pulse_ns");
  private static final List<String> NEEDED = List.of("rig", "checked_at", "power_pct", "metered_w");

  static PowerCheckSheet of(SheetText text, DateOrder dates) {
    return new PowerCheckSheet(TextTable.read(text, HEADINGS, NEEDED), dates);
  }

  /**
   * The checks by the rig they are of.
   *
   * @param rigSheet name of the sheet of the rigs
   * @param named its rows
   */
  Map<String, List<PowerCheck>> read(
      Logbook log, Clock clock, String rigSheet, Map<String, SheetRow> named) {
    Faults faults = new Faults(table.name());
    record Check(String rig, PowerCheck check) {}
    List<Check> read = new ArrayList<>();
    for (SheetRow row : table.rows()) {
      String rig = RigCells.name(row);
      if (RigCells.isOfNoRig(row, rigSheet, named, faults)) {
        continue;
      }
      try {
        OffsetDateTime at =
            RigCells.need(
                row, "checked_at", t -> SheetTimes.parseFrom(t, clock.getZone(), dates), faults);
        double percent =
            RigCells.need(row, "power_pct", t -> Measure.parse(t, Quantity.SHARE).value(), faults);
        double watts =
            RigCells.need(row, "metered_w", t -> Measure.parse(t, Quantity.POWER).value(), faults);
        read.add(
            new Check(
                RigCells.key(rig),
                new PowerCheck(
                    log.newId(),
                    at,
                    percent,
                    watts,
                    RigCells.number(row, "rep_khz", Quantity.RATE, faults),
                    RigCells.number(row, "pulse_ns", Quantity.PULSE_DURATION, faults))));
      } catch (RigCells.BadCell e) {
        // reported to the faults where it was found
      } catch (Refusal e) {
        faults.add(row.line(), e.getMessage());
      }
    }
    faults.refuseIfAny();
    return read.stream()
        .collect(
            Collectors.groupingBy(
                Check::rig, Collectors.mapping(Check::check, Collectors.toList())));
  }

  /** Adds those that a known rig has not yet, and counts them. */
  static int addNew(Rig rig, List<PowerCheck> checks, Logbook log, String by) {
    int added = 0;
    for (PowerCheck check : checks) {
      Optional<PowerCheck> old =
          rig.checks().stream().filter(c -> isSameReading(c, check)).findFirst();
      if (old.isEmpty()) {
        log.rigEntries().addCheck(rig.name(), check, by);
        added++;
      } else if (old.get().meteredWatts() != check.meteredWatts()) {
        throw Refusal.data(
            "Rig %s already has a power check at that time, %s W at %s %% on %s, not %s W; correct the sheet."
                .formatted(
                    rig.name(),
                    SheetNumbers.text(old.get().meteredWatts()),
                    SheetNumbers.text(check.percent()),
                    check.at().toLocalDate(),
                    SheetNumbers.text(check.meteredWatts())));
      }
    }
    return added;
  }

  private static boolean isSameReading(PowerCheck a, PowerCheck b) {
    return a.at().isEqual(b.at())
        && a.percent() == b.percent()
        && a.repetitionKilohertz().equals(b.repetitionKilohertz())
        && a.pulseNanoseconds().equals(b.pulseNanoseconds());
  }
}
