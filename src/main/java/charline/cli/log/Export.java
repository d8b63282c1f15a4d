package charline.cli.log;

import charline.cli.ask.FilterOptions;
import charline.cli.command.LogCommand;
import charline.exposure.PowerSetting;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.log.PatchEntry;
import charline.log.sheet.RigSheetExporter;
import charline.log.sheet.SampleSheet;
import charline.log.sheet.TrialSheetExporter;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Sample;
import charline.wording.Table;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code export}. */
@Command(
    addMethodSubcommands = false,
    name = "export",
    header = "Write patches as a trial sheet (CSV).",
    description =
        "One line per reading; column heads name the units: power_pct in %%, hand_mm_s in mm/s,"
            + " depth_um in um. Doses also depend on the rigs and their power checks; export those"
            + " too, and `charline import` restores every patch with its doses. Void patches,"
            + " plans, photos and past changes are left out; `charline backup` keeps everything.",
    footer = {
      "",
      "Examples:",
      "  charline export --family latex --since 2026-06-01 --to latex.csv",
      "  charline export --to all.csv --rigs rigs.csv --power-checks checks.csv"
          + " --samples samples.csv"
    })
public final class Export extends LogCommand {
  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Write to this file. Default: print it.")
  private Path to;

  @Option(names = "--replace", description = "Overwrite an existing file.")
  private boolean replace;

  @Option(
      names = "--rigs",
      paramLabel = "FILE",
      description = "Write the rigs of these patches too, as `charline import --rigs` reads them.")
  private Path rigsTo;

  @Option(
      names = "--power-checks",
      paramLabel = "FILE",
      description = "Write the power checks of those rigs too; needs --rigs.")
  private Path checksTo;

  @Option(
      names = "--upkeep",
      paramLabel = "FILE",
      description = "Write what was done to those rigs too; needs --rigs.")
  private Path upkeepTo;

  @Option(
      names = "--samples",
      paramLabel = "FILE",
      description =
          "Write the sample results of these finishes and of whole jobs too, as `charline import"
              + " --samples` reads them.")
  private Path samplesTo;

  @Parameters(
      paramLabel = "WORDS",
      arity = "0..*",
      description = "Which patches, as `charline find` is asked. Default: all.")
  private List<String> words = List.of();

  @Mixin private FilterOptions options;

  @Override
  public Integer call() {
    requireFiles();
    try (Logbook log = desk.logToCheck()) {
      List<PatchEntry> entries = options.with(words, log, desk).patches(log);
      if (entries.isEmpty()) {
        desk.err().println("No patch matches, so there is nothing to export.");
        return NO;
      }
      writePatches(entries, log.ownWords());
      writeRigs(rigsOf(entries));
      writeSamples(log, entries);
    }
    return DONE;
  }

  private void requireFiles() {
    if (checksTo != null && rigsTo == null) {
      throw Refusal.usage(
          "--power-checks needs --rigs, since `charline import` reads the two together; give a file"
              + " for --rigs too.");
    }
    if (upkeepTo != null && rigsTo == null) {
      throw Refusal.usage(
          "--upkeep needs --rigs, since `charline import` reads the two together; give a file for"
              + " --rigs too.");
    }
    Set<Path> files = new HashSet<>();
    for (Path file : Arrays.asList(to, rigsTo, checksTo, upkeepTo, samplesTo)) {
      if (file == null) {
        continue;
      }
      if (!files.add(file.toAbsolutePath().normalize())) {
        throw Refusal.usage(
            "Each part of an export needs its own file; %s is given twice.".formatted(file));
      }
      if (!replace && Files.exists(file)) {
        throw Refusal.usage(
            "%s already exists; give another name, or --replace to overwrite it.".formatted(file));
      }
    }
  }

  private void writePatches(List<PatchEntry> entries, OwnWords words) {
    if (to == null) {
      StringWriter text = new StringWriter();
      TrialSheetExporter.write(entries, words, text);
      desk.out().print(text);
    } else {
      TrialSheetExporter.write(entries, words, to);
      say(Figures.count(entries.size(), "patch", "patches"), to);
    }
    long metered = entries.stream().map(PatchEntry::patch).filter(Export::isMetered).count();
    if (checksTo == null && metered > 0) {
      desk.err()
          .println(
              Table.paragraph(
                  "%s on power checks, which this sheet does not contain: write them too with --rigs FILE --power-checks FILE, and import all three together."
                      .formatted(
                          metered == 1
                              ? "The dose of 1 patch depends"
                              : "The doses of %d patches depend".formatted(metered))));
    }
  }

  private void writeRigs(List<Rig> rigs) {
    if (rigsTo != null) {
      RigSheetExporter.writeRigs(rigs, rigsTo);
      say(Figures.count(rigs.size(), "rig", "rigs"), rigsTo);
    }
    if (upkeepTo != null) {
      writeUpkeep(rigs);
    }
    if (checksTo == null) {
      return;
    }
    int checks = rigs.stream().mapToInt(rig -> rig.checks().size()).sum();
    if (checks == 0) {
      // Column names with no line under them are a sheet that no import takes.
      desk.err()
          .println(
              Table.paragraph(
                  "None of these rigs has a power check, so %s is not written."
                      .formatted(checksTo)));
    } else {
      RigSheetExporter.writeChecks(rigs, checksTo);
      say(Figures.count(checks, "power check", "power checks"), checksTo);
    }
  }

  private void writeUpkeep(List<Rig> rigs) {
    int entries = rigs.stream().mapToInt(rig -> rig.upkeep().size()).sum();
    if (entries == 0) {
      desk.err()
          .println(
              Table.paragraph(
                  "None of these rigs has upkeep, so %s is not written.".formatted(upkeepTo)));
    } else {
      RigSheetExporter.writeUpkeep(rigs, upkeepTo);
      say(Figures.count(entries, "upkeep entry", "upkeep entries"), upkeepTo);
    }
  }

  private void writeSamples(Logbook log, List<PatchEntry> entries) {
    if (samplesTo == null) {
      return;
    }
    Set<Finish> burned =
        entries.stream().map(entry -> entry.patch().finish()).collect(Collectors.toSet());
    List<Sample> samples =
        log.samples().standing().stream()
            .filter(sample -> sample.finish().map(burned::contains).orElse(true))
            .toList();
    if (samples.isEmpty()) {
      desk.err()
          .println(
              Table.paragraph(
                  "None of these finishes has a sample result, so %s is not written."
                      .formatted(samplesTo)));
    } else {
      SampleSheet.write(samples, samplesTo);
      say(Figures.count(samples.size(), "sample result", "sample results"), samplesTo);
    }
  }

  /** True if a power check says what the patch got; power given in watts is taken as it is. */
  private static boolean isMetered(Patch patch) {
    return patch.settings().power().unit() == PowerSetting.Unit.PERCENT
        && patch.rig().checkAt(patch.burnedAt()).isPresent();
  }

  private static List<Rig> rigsOf(List<PatchEntry> entries) {
    return entries.stream()
        .map(entry -> entry.patch().rig())
        .distinct()
        .sorted(Comparator.comparing(Rig::name))
        .toList();
  }

  /** Not where the sheet itself is printed, which would be spoilt. */
  private void say(String what, Path file) {
    (to == null ? desk.err() : desk.out()).println("%s written to %s.".formatted(what, file));
  }
}
