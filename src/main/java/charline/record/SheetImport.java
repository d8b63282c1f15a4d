package charline.record;

import charline.log.Logbook;
import charline.log.sheet.ImportResult;
import charline.log.sheet.RigSheet;
import charline.log.sheet.SampleSheet;
import charline.log.sheet.SheetColumns;
import charline.log.sheet.SheetManner;
import charline.log.sheet.TrialSheet;
import charline.log.sheet.TrialSheetImporter;
import charline.progress.WorkWatch;
import charline.quantity.Figures;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Brings trial sheets into a log, with the rigs and samples that belong to them: everything or
 * nothing.
 */
public final class SheetImport {
  private final Logbook log;
  private final Clock clock;
  private final String by;
  private final String hint;
  private final boolean sure;
  private WorkWatch progress = WorkWatch.NONE;

  /**
   * @param by who sets up the rigs
   * @param hint how a person says that doubtful values are meant as they are
   * @param sure whether the person has said so
   */
  public SheetImport(Logbook log, Clock clock, String by, String hint, boolean sure) {
    this.log = log;
    this.clock = clock;
    this.by = by;
    this.hint = hint;
    this.sure = sure;
  }

  /** The same, telling how far it is. */
  public SheetImport watched(WorkWatch by) {
    progress = by;
    return this;
  }

  /**
   * The files of an import.
   *
   * @param trials trial sheets
   * @param rigs rigs to set up first
   * @param checks their power checks; needs rigs
   * @param upkeep what was done to them; needs rigs
   * @param samples sample results
   */
  public record Files(
      List<Path> trials,
      Optional<Path> rigs,
      Optional<Path> checks,
      Optional<Path> upkeep,
      Optional<Path> samples) {
    /** True if there is nothing to import. */
    public boolean isEmpty() {
      return trials.isEmpty() && rigs.isEmpty() && samples.isEmpty();
    }
  }

  /** The files as they were read, each under its name. */
  public record Sheets(
      Files files,
      Optional<RigSheet> rigs,
      List<TrialSheet> trials,
      Optional<SampleSheet> samples) {
    public Sheets {
      trials = List.copyOf(trials);
    }
  }

  /**
   * What came of a file.
   *
   * @param file its name
   * @param rigs what a rig sheet brought
   * @param trials what a trial sheet brought
   * @param columns what became of columns of a trial sheet that are not charline's own
   * @param samples new results of a sample sheet
   */
  public record Done(
      String file,
      Optional<RigSheet.Brought> rigs,
      Optional<ImportResult> trials,
      Optional<SheetColumns> columns,
      OptionalInt samples) {
    /** In a sentence. */
    public String sentence() {
      String what =
          trials
              .map(result -> result.words() + columns.map(SheetColumns::words).orElse(""))
              .or(() -> rigs.map(Done::words))
              .orElseGet(
                  () ->
                      Figures.count(samples.orElse(0), "new sample result", "new sample results"));
      return "%s: %s.".formatted(file, what);
    }

    private static String words(RigSheet.Brought brought) {
      return Figures.count(brought.rigs(), "new rig", "new rigs")
          + further(brought.furtherChecks(), "further power check", "further power checks")
          + further(brought.furtherUpkeep(), "further upkeep entry", "further upkeep entries");
    }

    private static String further(int count, String one, String many) {
      return count == 0 ? "" : ", " + Figures.count(count, one, many);
    }
  }

  /**
   * Reads the files; needs no log.
   *
   * @param manner how sheets are to be read that a person laid out
   */
  public static Sheets read(Files files, SheetManner manner) {
    return new Sheets(
        files,
        files
            .rigs()
            .map(file -> RigSheet.read(file, files.checks(), files.upkeep(), manner.dates())),
        files.trials().stream().map(file -> TrialSheet.read(file, manner)).toList(),
        files.samples().map(file -> SampleSheet.read(file, manner.dates())));
  }

  /** Imports the sheets; gives what came of each. */
  public List<Done> add(Sheets sheets) {
    return run(sheets, false);
  }

  /** Looks what would come of each, and records nothing. */
  public List<Done> check(Sheets sheets) {
    return run(sheets, true);
  }

  private List<Done> run(Sheets sheets, boolean check) {
    Files files = sheets.files();
    List<Done> done = new ArrayList<>();
    try {
      log.inTransaction(
          () -> {
            sheets.rigs().ifPresent(sheet -> done.add(addRigs(files.rigs().get(), sheet)));
            for (int i = 0; i < sheets.trials().size(); i++) {
              done.add(addTrials(files.trials().get(i), sheets.trials().get(i)));
            }
            sheets.samples().ifPresent(sheet -> done.add(addSamples(files.samples().get(), sheet)));
            if (check) {
              throw new OnlyChecked();
            }
            return null;
          });
    } catch (OnlyChecked e) {
      return done;
    }
    return done;
  }

  private Done addRigs(Path file, RigSheet sheet) {
    RigSheet.Brought brought =
        sheet.addTo(log, clock, by, sure ? Optional.empty() : Optional.of(hint));
    return new Done(
        name(file), Optional.of(brought), Optional.empty(), Optional.empty(), OptionalInt.empty());
  }

  private Done addSamples(Path file, SampleSheet sheet) {
    return new Done(
        name(file),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalInt.of(sheet.addTo(log, by)));
  }

  private Done addTrials(Path file, TrialSheet sheet) {
    ImportResult done = new TrialSheetImporter(log, clock, hint).watched(progress).add(sheet, sure);
    return new Done(
        name(file),
        Optional.empty(),
        Optional.of(done),
        Optional.of(sheet.columns()),
        OptionalInt.empty());
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }

  /** Undoes the transaction of a dry run. */
  private static final class OnlyChecked extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OnlyChecked() {
      super("only checked", null, false, false);
    }
  }
}
