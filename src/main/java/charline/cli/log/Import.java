package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.log.Logbook;
import charline.record.SheetImport;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.List;
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
    SheetImport.Sheets sheets =
        SheetImport.read(
            new SheetImport.Files(
                files,
                Optional.ofNullable(rigs),
                Optional.ofNullable(powerChecks),
                Optional.ofNullable(upkeep),
                Optional.ofNullable(samples)));
    try (Logbook log = desk.logToWrite()) {
      SheetImport sheetImport =
          new SheetImport(log, desk.clock(), desk.person(by), SureOption.HINT, sure.given())
              .watched(desk.progress());
      List<String> done = check ? sheetImport.check(sheets) : sheetImport.add(sheets);
      if (check) {
        desk.out().println("Nothing is recorded yet. This would be imported:");
      }
      done.forEach(this::say);
    }
    return DONE;
  }
}
