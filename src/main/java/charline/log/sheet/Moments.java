package charline.log.sheet;

import charline.refusal.Refusal;
import charline.trial.Plausibility;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Optional;

/** Reads times cell by cell; wrong cells become faults. */
final class Moments {
  private final Clock clock;
  private final DateOrder dates;
  private final Faults faults;
  private final CellDoubts doubts;
  private final CellMeanings<OffsetDateTime> meanings = new CellMeanings<>();

  /**
   * @param clock gives the zone of times without one, and the year
   */
  Moments(Clock clock, DateOrder dates, Faults faults, CellDoubts doubts) {
    this.clock = clock;
    this.dates = dates;
    this.faults = faults;
    this.doubts = doubts;
  }

  /** The time in a cell; nothing if there was a fault. */
  Optional<OffsetDateTime> at(SheetRow row, Column column) {
    try {
      OffsetDateTime moment =
          meanings.of(
              column, row.text(column), text -> SheetTimes.parse(text, clock.getZone(), dates));
      int thisYear = clock.instant().atZone(clock.getZone()).getYear();
      doubts.report(row, column, Plausibility.aboutYear(moment.getYear(), thisYear));
      return Optional.of(moment);
    } catch (Refusal e) {
      faults.add(row, column, e.getMessage());
      return Optional.empty();
    }
  }
}
