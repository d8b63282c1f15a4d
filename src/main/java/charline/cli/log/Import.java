package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.sheet.OwnHeadings;
import charline.record.SheetImport;
import charline.refusal.Refusal;
import charline.wording.ImportJson;
import charline.wording.Table;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code import}. */
@Command(
    addMethodSubcommands = false,
    name = "import",
    header = "Import trial sheets (CSV).",
    description =
        "One line per reading; column heads name the units: power_pct in %%, hand_mm_s in mm/s,"
            + " depth_um in um. Boards and finishes that are new to the log are added; rigs must be"
            + " in the log already, or come with --rigs. Either everything is imported or nothing;"
            + " importing a sheet again adds nothing. A sheet may be UTF-8, UTF-16 or"
            + " Windows-1252.",
    footer = {
      "",
      "Example, first without recording anything:",
      "  charline import boathouse.csv --check",
      "  charline import boathouse.csv",
      "",
      "A sheet with headings and dates of your own:",
      "  charline import slipway.csv --map \"speed=hand_mm_s\" --map \"result=outcome\" \\",
      "      --extra note --dates day-first"
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

  @Mixin private HeadingOptions headings;
  @Mixin private SureOption sure;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who sets up the rigs. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    if (headings.aboutHeadings()) {
      return showHeadings();
    }
    requireFiles();
    SheetImport.Sheets sheets =
        headings.read(
            new SheetImport.Files(
                files,
                Optional.ofNullable(rigs),
                Optional.ofNullable(powerChecks),
                Optional.ofNullable(upkeep),
                Optional.ofNullable(samples)),
            desk);
    try (Logbook log = desk.logToWrite()) {
      SheetImport sheetImport =
          new SheetImport(log, desk.clock(), desk.person(by), SureOption.HINT, sure.given())
              .watched(desk.progress());
      List<SheetImport.Done> done = check ? sheetImport.check(sheets) : sheetImport.add(sheets);
      Optional<String> remembered = check ? Optional.empty() : headings.remember(desk.logFile());
      reply.print(desk.out(), () -> ImportJson.of(done, !check), () -> text(done, remembered));
    }
    return DONE;
  }

  private String text(List<SheetImport.Done> done, Optional<String> remembered) {
    StringBuilder text = new StringBuilder();
    if (check) {
      text.append("Nothing is recorded yet. This would be imported:\n");
    }
    Stream.concat(done.stream().map(SheetImport.Done::sentence), remembered.stream())
        .forEach(sentence -> Table.line(text, sentence));
    return text.toString();
  }

  private int showHeadings() {
    if (!files.isEmpty()) {
      throw Refusal.usage("--headings and --forget go without a sheet; import it afterwards.");
    }
    List<OwnHeadings.Meaning> all = headings.remembered(desk.logFile()).all();
    reply.sayAll(
        desk.out(),
        () -> ImportJson.headings(all),
        all.isEmpty()
            ? "No heading of your own is remembered; `charline import --map` says what one means."
            : all.stream()
                .map(OwnHeadings.Meaning::words)
                .collect(Collectors.joining("; ", "Remembered for sheets of this log: ", ".")));
    return DONE;
  }

  private void requireFiles() {
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
  }
}
