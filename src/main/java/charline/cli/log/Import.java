package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.log.Logbook;
import charline.log.sheet.ImportResult;
import charline.log.sheet.RigSheet;
import charline.log.sheet.SampleSheet;
import charline.log.sheet.SheetManner;
import charline.log.sheet.SheetManner.Dates;
import charline.log.sheet.SheetManner.Extra;
import charline.log.sheet.TrialSheet;
import charline.log.sheet.TrialSheetImporter;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.wording.Table;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code import}. */
@Command(
    name = "import",
    header = "Import trial sheets (CSV).",
    description =
        "One line per reading; column heads name the units: power_pct in %%, hand_mm_s in mm/s,"
            + " depth_um in um. Boards and finishes that are new to the log are added; rigs must be"
            + " in the log already, or come with --rigs. Either everything is imported or nothing;"
            + " importing a sheet again adds nothing.",
    footer = {
      "",
      "Example, first without recording anything:",
      "  charline import boathouse.csv --check",
      "  charline import boathouse.csv"
    })
public final class Import extends LogCommand {
  @Parameters(paramLabel = "FILE.csv", arity = "0..*", description = "Trial sheets.")
  private List<Path> files = List.of();

  @Option(
      names = "--rigs",
      paramLabel = "FILE.csv",
      description = "Rigs to set up first (rated_w, wavelength_nm, spot_mm and so on).")
  private Path rigs;

  @Option(
      names = "--power-checks",
      paramLabel = "FILE.csv",
      description = "Power checks of those rigs and of rigs in the log (power_pct, metered_w).")
  private Path powerChecks;

  @Option(
      names = "--upkeep",
      paramLabel = "FILE.csv",
      description = "What was done to those rigs, and to rigs in the log (done_at, what, hours).")
  private Path upkeep;

  @Option(
      names = "--samples",
      paramLabel = "FILE.csv",
      description = "Sample results of finishes in the log or in the trial sheets.")
  private Path samples;

  @Option(names = "--check", description = "Show what would be imported, and record nothing.")
  private boolean check;

  @Option(
      names = "--extra",
      paramLabel = "note|skip",
      description =
          "What becomes of unknown columns of a trial sheet: notes, or nothing. Default: the sheet"
              + " is refused.")
  private String extra;

  @Option(
      names = "--dates",
      paramLabel = "day-first|month-first",
      description = "How 05/11/2026 is meant. Default: as a day above 12 in the sheet tells.")
  private String dates;

  @Mixin private SureOption sure;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who sets up the rigs. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Override
  public Integer call() {
    if (files.isEmpty() && rigs == null && samples == null) {
      throw Refusal.usage("Give a trial sheet, such as `charline import boathouse.csv`.");
    }
    if (powerChecks != null && rigs == null) {
      throw Refusal.usage(
          "--power-checks needs --rigs; `charline rig check` records a single one.");
    }
    if (upkeep != null && rigs == null) {
      throw Refusal.usage("--upkeep needs --rigs; `charline rig upkeep` records a single entry.");
    }
    Optional<RigSheet> rigSheet = Optional.ofNullable(rigs).map(this::rigSheet);
    Optional<SampleSheet> sampleSheet = Optional.ofNullable(samples).map(SampleSheet::read);
    Map<Path, TrialSheet> sheets = new LinkedHashMap<>();
    SheetManner manner = manner();
    files.forEach(file -> sheets.put(file, read(file, manner)));
    try (Logbook log = desk.logToWrite()) {
      List<String> done = new ArrayList<>();
      try {
        log.inTransaction(
            () -> {
              rigSheet.ifPresent(sheet -> done.add(addRigs(sheet, log)));
              sheets.forEach((file, sheet) -> done.add(addTrials(file, sheet, log)));
              sampleSheet.ifPresent(sheet -> done.add(addSamples(sheet, log)));
              if (check) {
                throw new OnlyChecked();
              }
              return null;
            });
      } catch (OnlyChecked e) {
        desk.out().println("Nothing is recorded yet. This would be imported:");
      }
      done.forEach(this::say);
    }
    return DONE;
  }

  private SheetManner manner() {
    Extra columns =
        extra == null
            ? Extra.REFUSE
            : switch (extra) {
              case "note" -> Extra.NOTE;
              case "skip" -> Extra.SKIP;
              default ->
                  throw Refusal.usage("--extra must be note or skip, not \"%s\".".formatted(extra));
            };
    Dates days =
        dates == null
            ? Dates.ASK
            : switch (dates) {
              case "day-first" -> Dates.DAY_FIRST;
              case "month-first" -> Dates.MONTH_FIRST;
              default ->
                  throw Refusal.usage(
                      "--dates must be day-first or month-first, not \"%s\".".formatted(dates));
            };
    return new SheetManner(columns, days);
  }

  /** A sheet, with a word on columns that are left out or become notes. */
  private TrialSheet read(Path file, SheetManner manner) {
    TrialSheet sheet;
    try {
      sheet = TrialSheet.read(file, manner);
    } catch (Refusal e) {
      throw e.getMessage().endsWith("say which.")
          ? e.reworded(
              e.getMessage()
                  .replaceFirst("say which\\.$", "add --dates day-first or --dates month-first."))
          : e;
    }
    if (!sheet.extras().isEmpty()) {
      desk.err()
          .println(
              Table.paragraph(
                  "%s: %s %s."
                      .formatted(
                          file.getFileName(),
                          String.join(", ", sheet.extras()),
                          manner.extra() == Extra.NOTE
                              ? "is taken along as notes"
                              : "is left out")));
    }
    return sheet;
  }

  private RigSheet rigSheet(Path file) {
    return RigSheet.read(file, Optional.ofNullable(powerChecks), Optional.ofNullable(upkeep));
  }

  private String addRigs(RigSheet sheet, Logbook log) {
    RigSheet.Brought brought = sheet.addTo(log, desk.clock(), desk.person(by), sure.hint());
    String further =
        brought.furtherChecks() == 0
            ? ""
            : ", "
                + Figures.count(
                    brought.furtherChecks(), "further power check", "further power checks");
    String upkept =
        brought.furtherUpkeep() == 0
            ? ""
            : ", "
                + Figures.count(
                    brought.furtherUpkeep(), "further upkeep entry", "further upkeep entries");
    return "%s: %s%s%s."
        .formatted(
            rigs.getFileName(),
            Figures.count(brought.rigs(), "new rig", "new rigs"),
            further,
            upkept);
  }

  private String addSamples(SampleSheet sheet, Logbook log) {
    int added = sheet.addTo(log, desk.person(by));
    return "%s: %s."
        .formatted(
            samples.getFileName(), Figures.count(added, "new sample result", "new sample results"));
  }

  private String addTrials(Path file, TrialSheet sheet, Logbook log) {
    ImportResult done =
        new TrialSheetImporter(log, desk.clock(), SureOption.HINT).add(sheet, sure.given());
    return "%s: %s.".formatted(file.getFileName(), done.words());
  }

  /** Undoes the transaction of a dry run. */
  private static final class OnlyChecked extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OnlyChecked() {
      super("only checked", null, false, false);
    }
  }
}
