package charline.web.pages;

import charline.ask.Question;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.sheet.RigSheetExporter;
import charline.log.sheet.SampleSheet;
import charline.log.sheet.TrialSheetExporter;
import charline.refusal.Refusal;
import charline.trial.Finish;
import charline.trial.Rig;
import charline.trial.Sample;
import charline.web.entry.Uploads;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** What leaves the log: sheets of patches and of what belongs to them, and copies of all. */
final class ExportPages {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss", Locale.ROOT);

  private final Logbook log;
  private final Uploads uploads;
  private final PageOptions options;

  ExportPages(Logbook log, Uploads uploads, PageOptions options) {
    this.log = log;
    this.uploads = uploads;
    this.options = options;
  }

  void add(RoutesConfig routes) {
    routes.get("/log/export/{what}", this::export);
    routes.get("/log/backup", this::backup);
  }

  private void export(Context ctx) {
    List<PatchEntry> entries =
        Question.EVERYTHING
            .narrowed(new AskFilter(ctx).condition(log, options.clock()))
            .patches(log);
    if (entries.isEmpty()) {
      throw Refusal.nothingFound("No patch matches, so there is nothing to export.");
    }
    List<Rig> rigs =
        entries.stream()
            .map(e -> e.patch().rig())
            .distinct()
            .sorted(Comparator.comparing(Rig::name))
            .toList();
    String what = ctx.pathParam("what");
    String text =
        switch (what) {
          case "patches" -> patches(entries);
          case "rigs" -> text(rigs, RigSheetExporter::writeRigs);
          case "power-checks" ->
              text(some(rigs, rig -> !rig.checks().isEmpty()), RigSheetExporter::writeChecks);
          case "upkeep" ->
              text(some(rigs, rig -> !rig.upkeep().isEmpty()), RigSheetExporter::writeUpkeep);
          case "samples" -> text(samples(entries), SampleSheet::write);
          default ->
              throw Refusal.usage(
                  "Patches, rigs, power checks, upkeep or samples can be exported.");
        };
    attach(ctx, what + ".csv", "text/csv; charset=utf-8");
    ctx.result(text);
  }

  private static <T> List<T> some(List<T> all, Predicate<T> which) {
    return all.stream().filter(which).toList();
  }

  private String patches(List<PatchEntry> entries) {
    StringWriter text = new StringWriter();
    TrialSheetExporter.write(entries, log.ownWords(), text);
    return text.toString();
  }

  private List<Sample> samples(List<PatchEntry> entries) {
    Set<Finish> burned = entries.stream().map(e -> e.patch().finish()).collect(Collectors.toSet());
    return some(log.samples().standing(), s -> s.finish().map(burned::contains).orElse(true));
  }

  private <T> String text(List<T> rows, BiConsumer<List<T>, Path> write) {
    if (rows.isEmpty()) {
      throw Refusal.nothingFound(
          "There is none of that for these patches, so nothing is exported.");
    }
    Path file = uploads.fresh("sheet.csv");
    try {
      write.accept(rows, file);
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      uploads.done(file);
    }
  }

  private static void attach(Context ctx, String name, String type) {
    ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"").contentType(type);
  }

  private String base() {
    return String.valueOf(log.file().getFileName())
        .replaceFirst("\\.db$", "")
        .replaceAll("[^A-Za-z0-9._-]", "_");
  }

  private void backup(Context ctx) throws IOException {
    Path copy = uploads.fresh("backup.db");
    log.backup(copy);
    attach(
        ctx,
        "%s-%s.db".formatted(base(), STAMP.format(OffsetDateTime.now(options.clock()))),
        "application/vnd.sqlite3");
    ctx.header("Content-Length", String.valueOf(Files.size(copy)));
    ctx.result(Files.newInputStream(copy, StandardOpenOption.DELETE_ON_CLOSE));
  }
}
