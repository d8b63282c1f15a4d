package charline.web.pages;

import charline.ask.Question;
import charline.log.Finding;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.merge.Conflict;
import charline.log.merge.Merge;
import charline.log.merge.Merged;
import charline.log.merge.Resolution;
import charline.log.sheet.RigSheetExporter;
import charline.log.sheet.SampleSheet;
import charline.log.sheet.TrialSheetExporter;
import charline.quantity.Figures;
import charline.record.SheetImport;
import charline.refusal.Refusal;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Sample;
import charline.web.entry.Uploads;
import charline.web.live.LiveModels;
import charline.web.security.HttpRefusal;
import charline.wording.MergeText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The pages of the log as a whole: import with a check before, export, backup, merge, check. */
public final class LogPages {
  private static final long LARGEST_SHEET = 20_000_000;
  private static final long LARGEST_LOG = 2_000_000_000;
  private static final String SURE = "tick that you are sure";
  private static final String OF_LOG = "/log";

  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss", Locale.ROOT);

  /** A slow sender keeps a thread for as long as it sends. */
  private final Semaphore senders = new Semaphore(2);

  private final Logbook log;
  private final LiveModels models;
  private final Uploads uploads;
  private final PageOptions options;
  private final Pages pages;

  LogPages(Logbook log, LiveModels models, Uploads uploads, PageOptions options, Pages pages) {
    this.log = log;
    this.models = models;
    this.uploads = uploads;
    this.options = options;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get(OF_LOG, this::show);
    routes.post("/log/file", this::file);
    routes.get("/log/import", ctx -> importing(ctx, false));
    routes.post("/log/import", ctx -> importing(ctx, true));
    routes.get("/log/export/{what}", this::export);
    routes.get("/log/backup", this::backup);
    routes.get("/log/check", this::check);
    routes.get("/log/check/found", this::found);
    routes.get("/log/merge", this::mergeCheck);
    routes.post("/log/merge", this::merge);
  }

  /**
   * What came of an import or would come of it.
   *
   * @param lines a sentence each
   * @param done whether it is recorded
   * @param refusal why it was not taken, if so
   * @param query part of the address with the files
   */
  public record ImportView(
      List<String> lines, boolean done, Optional<String> refusal, String query) {}

  /**
   * What came of a merge or would come of it.
   *
   * @param name the other log
   * @param broughtIn in a line
   * @param lines what had to be done otherwise, and what is damaged
   * @param twice what both set up under one name
   * @param conflicts what they hold differently
   * @param done whether it is recorded
   * @param twins that patches would count twice, if so
   */
  public record MergeView(
      String file,
      String name,
      String broughtIn,
      List<String> lines,
      List<String> twice,
      List<Conflict> conflicts,
      boolean done,
      Optional<String> twins) {}

  /**
   * What a check found.
   *
   * @param verdict in a sentence
   * @param broken whether the log is damaged
   */
  public record Found(String verdict, boolean broken, List<Finding> findings) {}

  private void show(Context ctx) {
    pages.send(
        ctx,
        "log",
        pages.frame(ctx, "The log", "", "work.css", "upload.js"),
        Map.of("name", String.valueOf(log.file().getFileName()), "holds", holds()));
  }

  private String holds() {
    List<Patch> patches = models.shelf().trials().patches();
    int readings = patches.stream().mapToInt(p -> p.readings().size()).sum();
    return "%s with %s"
        .formatted(Figures.patches(patches.size()), Figures.count(readings, "reading", "readings"));
  }

  /** A file comes as the body alone; its name and what it is are in the address. */
  private void file(Context ctx) throws IOException {
    if (!senders.tryAcquire()) {
      throw new HttpRefusal(
          429, "Two files are being sent already; wait until one is here, then send it again.");
    }
    try {
      take(ctx);
    } finally {
      senders.release();
    }
  }

  private void take(Context ctx) throws IOException {
    String name = Asking.text(ctx, "name");
    long most = name.toLowerCase(Locale.ROOT).endsWith(".csv") ? LARGEST_SHEET : LARGEST_LOG;
    try (InputStream in = ctx.bodyInputStream()) {
      Pages.json(ctx, Map.of("id", uploads.keep(name, in, most).id()));
    }
  }

  private void importing(Context ctx, boolean record) {
    boolean sure = "true".equals(ctx.formParam("sure"));
    String query = String.valueOf(ctx.queryString());
    ImportView view;
    try {
      SheetImport.Files files =
          new SheetImport.Files(
              ctx.queryParams("trials").stream().map(uploads::of).toList(),
              sent(ctx, "rigs"),
              sent(ctx, "checks"),
              sent(ctx, "upkeep"),
              sent(ctx, "samples"));
      if (files.isEmpty()) {
        throw Refusal.usage("Choose a trial sheet, rigs or samples to import.");
      }
      if (files.rigs().isEmpty() && (files.checks().isPresent() || files.upkeep().isPresent())) {
        throw Refusal.usage(
            "Power checks and upkeep come with the sheet of their rigs; choose it too.");
      }
      SheetForm form = new SheetForm(ctx, log.file());
      SheetImport.Sheets read = SheetImport.read(files, form.manner());
      SheetImport sheets = new SheetImport(log, options.clock(), by(ctx), SURE, sure);
      List<SheetImport.Done> done = record ? sheets.add(read) : sheets.check(read);
      if (record) {
        form.remember();
      }
      List<String> lines = done.stream().map(SheetImport.Done::sentence).toList();
      view = new ImportView(lines, record, Optional.empty(), query);
    } catch (Refusal e) {
      ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
      view = new ImportView(List.of(), false, Optional.of(e.getMessage()), query);
    }
    pages.send(
        ctx,
        "import",
        pages.frame(ctx, record ? "Imported" : "Import", "", "work.css"),
        Map.of("view", view));
  }

  private Optional<Path> sent(Context ctx, String name) {
    String id = Asking.text(ctx, name);
    return id.isEmpty() ? Optional.empty() : Optional.of(uploads.of(id));
  }

  private String by(Context ctx) {
    return Optional.ofNullable(ctx.formParam("by"))
        .filter(by -> !by.isBlank())
        .orElseGet(() -> Pages.recorder(ctx, options.person()));
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

  /** All rows are read, which takes longer than a page should: what is found comes by itself. */
  private void check(Context ctx) {
    boolean now = "yes".equals(ctx.queryParam("now"));
    pages.send(
        ctx,
        "log-check",
        pages.frame(ctx, "Check of the log", "", "work.css", "parts.js"),
        Map.of("found", now ? Optional.of(findings()) : Optional.empty()));
  }

  private void found(Context ctx) {
    Pages.send(ctx, Pages.filled("log-found", Map.of("found", findings())));
  }

  private Found findings() {
    List<Finding> findings = log.check();
    boolean broken = findings.stream().anyMatch(f -> f.kind() == Finding.Kind.FAULT);
    String verdict =
        broken
            ? "The log is damaged. Make a copy of it, then go back to the latest backup; an export"
                + " may still save its patches."
            : "The log is undamaged: %s; %s."
                .formatted(
                    holds(),
                    findings.isEmpty()
                        ? "nothing looks mistyped"
                        : Figures.count(findings.size(), "value looks", "values look")
                            + " mistyped");
    return new Found(verdict, broken, findings);
  }

  /** Merges into a copy, so that nothing of this log is touched before a person has looked. */
  private void mergeCheck(Context ctx) {
    String id = Asking.text(ctx, "file");
    Path other = uploads.of(id);
    Path copy = uploads.fresh(String.valueOf(log.file().getFileName()));
    log.backup(copy);
    try (Logbook tried = Logbook.openExisting(copy, options.clock())) {
      send(ctx, id, other, Merge.into(tried, by(ctx)).from(other, Resolution.UNDECIDED), false);
    } catch (Refusal e) {
      refused(ctx, id, other, e);
    } finally {
      uploads.done(copy);
    }
  }

  private void merge(Context ctx) {
    String id = Asking.text(ctx, "file");
    Path other = uploads.of(id);
    Resolution take =
        switch (Optional.ofNullable(ctx.formParam("take")).orElse("")) {
          case "here" -> Resolution.HERE;
          case "there" -> Resolution.THERE;
          default -> Resolution.UNDECIDED;
        };
    try {
      Merged merged =
          Merge.into(log, by(ctx))
              .sure("true".equals(ctx.formParam("sure")))
              .joining("true".equals(ctx.formParam("join")))
              .confirmedBy(SURE)
              .from(other, take);
      send(ctx, id, other, merged, true);
    } catch (Refusal e) {
      refused(ctx, id, other, e);
    }
  }

  private void send(Context ctx, String id, Path other, Merged merged, boolean done) {
    List<String> lines = new ArrayList<>(merged.notes());
    merged.joined().forEach(pair -> lines.add(MergeText.joined(pair)));
    if (merged.settled() > 0) {
      lines.add(
          Figures.count(merged.settled(), "conflict is resolved.", "conflicts are resolved."));
    }
    lines.addAll(merged.damage());
    sendView(
        ctx,
        new MergeView(
            id,
            String.valueOf(other.getFileName()),
            MergeText.broughtIn(merged),
            lines,
            merged.twice().stream()
                .map(
                    pair ->
                        "%s %s agrees with %s."
                            .formatted(
                                MergeText.capital(pair.kind().word()), pair.name(), pair.known()))
                .toList(),
            merged.unresolved(),
            done,
            Optional.empty()));
  }

  private void refused(Context ctx, String id, Path other, Refusal e) {
    ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
    sendView(
        ctx,
        new MergeView(
            id,
            String.valueOf(other.getFileName()),
            "",
            List.of(),
            List.of(),
            List.of(),
            false,
            Optional.of(e.getMessage())));
  }

  private void sendView(Context ctx, MergeView view) {
    pages.send(
        ctx,
        "merge",
        pages.frame(ctx, view.done() ? "Merged" : "Merge", "", "work.css"),
        Map.of("view", view));
  }
}
