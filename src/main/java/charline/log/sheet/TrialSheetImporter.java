package charline.log.sheet;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.progress.WorkWatch;
import charline.trial.Plausibility.Doubt;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/**
 * Brings a trial sheet into the log: all of it or nothing. Boards and finishes that the log does
 * not know are made; rigs must be there. A patch whose code the log has with the same content is
 * passed over, so that importing twice does no harm. Two logs agree after an export and an import
 * in every value, name, time and typed unit; identities are given anew.
 *
 * <p>With {@code sure} false, values far from hand-held work are refused ({@link
 * charline.trial.Plausibility}).
 */
public final class TrialSheetImporter {
  /** Patches that are brought in together: what a log is asked once for all costs little each. */
  private static final int AT_ONCE = 64;

  private final Logbook log;
  private final Clock clock;
  private final String hint;
  private WorkWatch progress = WorkWatch.NONE;

  /**
   * An importer into a log.
   *
   * @param clock gives the zone of times without one, and the year
   */
  public TrialSheetImporter(Logbook log, Clock clock) {
    this(log, clock, Doubt.IN_WORDS);
  }

  /**
   * An importer into a log.
   *
   * @param clock gives the zone of times without one, and the year
   * @param hint how a person says that doubtful values are meant as they stand
   */
  public TrialSheetImporter(Logbook log, Clock clock, String hint) {
    this.log = log;
    this.clock = clock;
    this.hint = hint;
  }

  /** The same, telling how far it is. */
  public TrialSheetImporter watched(WorkWatch by) {
    progress = by;
    return this;
  }

  /**
   * Says what {@link #add} would do and leaves the log as it is.
   *
   * @throws charline.refusal.Refusal naming line, column and value of the first twenty faults
   */
  public ImportResult check(TrialSheet sheet, boolean sure) {
    return read(sheet, sure, (entries, stock) -> {});
  }

  /**
   * Records the sheet in one transaction.
   *
   * @throws charline.refusal.Refusal naming line, column and value of the first twenty faults; the
   *     log is then as it was
   */
  public ImportResult add(TrialSheet sheet, boolean sure) {
    return log.inLargeTransaction(
        () -> {
          // Given codes first, so that no free code is handed out that the sheet uses further down.
          List<PatchEntry> uncoded = new ArrayList<>();
          ImportResult result =
              read(
                  sheet,
                  sure,
                  (entries, stock) -> {
                    Runnable addNew = stock.takeNew();
                    Runnable addPatches =
                        log.bringingIn(entries.stream().filter(e -> isCoded(e)).toList());
                    log.later(
                        () -> {
                          addNew.run();
                          addPatches.run();
                        });
                    entries.stream().filter(e -> !isCoded(e)).forEach(uncoded::add);
                  });
          uncoded.forEach(
              e -> log.bringingIn(List.of(e.with(e.patch().withCode(log.nextPatchCode())))).run());
          return result;
        });
  }

  /**
   * Reads every patch and hands on those that are new, some at a time and none after a fault, as a
   * large sheet has more of them than fit into memory.
   */
  private ImportResult read(
      TrialSheet sheet, boolean sure, BiConsumer<List<PatchEntry>, SheetStock> taker) {
    Faults faults = new Faults(sheet.name());
    KnobCells knobs = new KnobCells(faults, sheet.separator());
    CellDoubts doubts = new CellDoubts(faults, sure ? Optional.empty() : Optional.of(hint));
    SheetStock stock = new SheetStock(log, faults, knobs, doubts);
    Moments moments = new Moments(clock, sheet.dates(), faults, doubts);
    Readings readings = new Readings(log, faults, knobs, doubts, moments);
    PatchReader reader =
        new PatchReader(log, sheet, faults, knobs, stock, doubts, moments, readings);
    Recorded recorded = new Recorded(log);
    Strays strays = new Strays(log);
    List<Read> some = new ArrayList<>();
    int patches = 0;
    int readingCount = 0;
    int skipped = 0;
    long lines = 0;
    try (Stream<List<SheetRow>> groups = sheet.patches()) {
      Iterator<List<SheetRow>> all = groups.iterator();
      while (all.hasNext()) {
        List<SheetRow> rows = all.next();
        lines += rows.size();
        progress.at("Importing " + sheet.name(), lines, sheet.lineCount());
        reader.read(rows).ifPresent(entry -> some.add(new Read(entry, rows.get(0))));
        if (some.size() == AT_ONCE || !all.hasNext()) {
          List<PatchEntry> fresh = fresh(some, recorded, faults, strays);
          patches += fresh.size();
          skipped += some.size() - fresh.size();
          readingCount += fresh.stream().mapToInt(entry -> entry.patch().readings().size()).sum();
          some.clear();
          if (faults.count() == 0 && !fresh.isEmpty()) {
            taker.accept(fresh, stock);
          }
        }
      }
    }
    strays.report(doubts);
    faults.refuseIfAny();
    return new ImportResult(
        patches, readingCount, stock.boardsBrought(), stock.finishesBrought(), skipped);
  }

  /** A patch of the sheet with its first line. */
  private record Read(PatchEntry entry, SheetRow first) {}

  /** Those of some patches that the log does not know. */
  private static List<PatchEntry> fresh(
      List<Read> some, Recorded recorded, Faults faults, Strays strays) {
    Map<String, PatchEntry> known =
        recorded.ofCodes(some.stream().map(read -> read.entry().patch().code()).toList());
    List<PatchEntry> burnedThen =
        recorded.burnedWith(some.stream().map(Read::entry).filter(e -> !isCoded(e)).toList());
    List<PatchEntry> fresh = new ArrayList<>();
    for (Read read : some) {
      PatchEntry entry = read.entry();
      PatchEntry old = known.get(PatchLines.key(entry.patch().code()));
      if (old != null) {
        mustBeSame(old, read, faults);
      } else if (isCoded(entry) || !recorded.claim(entry, burnedThen)) {
        strays.take(entry.patch(), read.first());
        fresh.add(entry);
      }
    }
    return fresh;
  }

  private static void mustBeSame(PatchEntry old, Read read, Faults faults) {
    Recorded.difference(old, read.entry())
        .ifPresent(
            what ->
                faults.add(
                    read.first(),
                    Column.PATCH,
                    "%s is in the log and differs in its %s; give this patch its own code, or amend the one in the log."
                        .formatted(read.entry().patch().code(), what)));
  }

  private static boolean isCoded(PatchEntry entry) {
    return !entry.patch().code().isEmpty();
  }
}
