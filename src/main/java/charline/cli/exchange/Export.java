package charline.cli.exchange;

import charline.cli.ask.FilterOptions;
import charline.cli.desk.Desk;
import charline.cli.desk.Work;
import charline.cli.render.Figures;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Refused;
import charline.log.trialsheet.TrialSheetExporter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code export}. */
@Command(
    name = "export",
    header = "Write patches as a trial sheet (CSV).",
    description =
        "One line per reading; column heads name the units: power_pct in %%, hand_mm_s in mm/s, "
            + "depth_um in um. `charline import` reads it back without loss. Void patches are left out.",
    footer = {"", "Example:", "  charline export --family latex --since 2026-06-01 --to latex.csv"})
public final class Export extends Work {
  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Write to this file. Default: print it.")
  private Path to;

  @Option(names = "--replace", description = "Write over a file that is there already.")
  private boolean replace;

  @Mixin private FilterOptions options;

  public Export(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    if (to != null && !replace && Files.exists(to)) {
      throw new Refused(
          Refused.Kind.USAGE,
          "%s is there already; give another name, or --replace to write over it.".formatted(to));
    }
    try (Logbook log = desk.logToRead()) {
      Filter filter = options.with(Filter.ALL, log, desk);
      List<PatchEntry> entries = log.patches(filter);
      if (entries.isEmpty()) {
        desk.err().println("No patch matches, so there is nothing to export.");
        return NO;
      }
      if (to == null) {
        StringWriter text = new StringWriter();
        TrialSheetExporter.write(entries, text);
        desk.out().print(text);
      } else {
        TrialSheetExporter.write(entries, to);
        desk.out()
            .println(
                "%s written to %s."
                    .formatted(Figures.count(entries.size(), "patch", "patches"), to));
      }
    }
    return DONE;
  }
}
