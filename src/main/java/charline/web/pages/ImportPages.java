package charline.web.pages;

import charline.log.Logbook;
import charline.record.SheetImport;
import charline.refusal.Refusal;
import charline.web.entry.Uploads;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sheets are checked, and then recorded. */
public final class ImportPages {
  /** How a person confirms what looks mistyped. */
  static final String SURE = "tick that you are sure";

  private final Logbook log;
  private final Uploads uploads;
  private final PageOptions options;
  private final Pages pages;

  ImportPages(Logbook log, Uploads uploads, PageOptions options, Pages pages) {
    this.log = log;
    this.uploads = uploads;
    this.options = options;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/log/import", ctx -> importing(ctx, false));
    routes.post("/log/import", ctx -> importing(ctx, true));
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
      SheetImport sheets =
          new SheetImport(log, options.clock(), Pages.by(ctx, options.person()), SURE, sure);
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
}
