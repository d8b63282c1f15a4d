package charline.web.pages;

import charline.log.Finding;
import charline.log.Logbook;
import charline.log.sheet.OwnHeadings;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.web.entry.Uploads;
import charline.web.live.LiveModels;
import charline.web.security.HttpRefusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;

/** The page of the log as a whole, the files that are sent for it, and its check. */
public final class LogPages {
  private static final long LARGEST_SHEET = 20_000_000;
  private static final long LARGEST_LOG = 2_000_000_000;
  private static final String OF_LOG = "/log";

  /** A slow sender keeps a thread for as long as it sends. */
  private final Semaphore senders = new Semaphore(2);

  private final Logbook log;
  private final LiveModels models;
  private final Uploads uploads;
  private final Pages pages;

  LogPages(Logbook log, LiveModels models, Uploads uploads, Pages pages) {
    this.log = log;
    this.models = models;
    this.uploads = uploads;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get(OF_LOG, this::show);
    routes.post("/log/file", this::file);
    routes.post("/log/headings/forget", this::forget);
    routes.get("/log/check", this::check);
    routes.get("/log/check/found", this::found);
  }

  /**
   * What a check found.
   *
   * @param verdict in a sentence
   * @param broken whether the log is damaged
   */
  public record Found(String verdict, boolean broken, List<Finding> findings) {}

  /**
   * The headings of a person's own that the next import takes for columns.
   *
   * @param trouble why they cannot be read, if so
   */
  public record Remembered(List<OwnHeadings.Meaning> headings, Optional<String> trouble) {}

  private void show(Context ctx) {
    pages.send(
        ctx,
        "log",
        pages.frame(ctx, "The log", "", "work.css", "upload.js"),
        Map.of(
            "name",
            String.valueOf(log.file().getFileName()),
            "holds",
            holds(),
            "remembered",
            remembered()));
  }

  /** The rest of the page is there even where their file is damaged. */
  private Remembered remembered() {
    try {
      return new Remembered(OwnHeadings.keptBeside(log.file()).all(), Optional.empty());
    } catch (Refusal e) {
      return new Remembered(
          List.of(),
          Optional.of(
              "The headings in %s cannot be read. %s"
                  .formatted(OwnHeadings.file(log.file()).getFileName(), e.getMessage())));
    }
  }

  private void forget(Context ctx) {
    String heading = Optional.ofNullable(ctx.formParam("heading")).orElse("");
    OwnHeadings.keptBeside(log.file()).without(heading).keepBeside(log.file());
    ctx.redirect(OF_LOG, HttpStatus.SEE_OTHER);
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
}
