package charline.web.pages;

import charline.log.Logbook;
import charline.log.merge.Conflict;
import charline.log.merge.Merge;
import charline.log.merge.Merged;
import charline.log.merge.Resolution;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.web.entry.Uploads;
import charline.wording.MergeText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Another bench's log is looked at beside this one, and then merged. */
public final class MergePages {
  private final Logbook log;
  private final Uploads uploads;
  private final PageOptions options;
  private final Pages pages;

  MergePages(Logbook log, Uploads uploads, PageOptions options, Pages pages) {
    this.log = log;
    this.uploads = uploads;
    this.options = options;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/log/merge", this::check);
    routes.post("/log/merge", this::merge);
  }

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

  /** Merges into a copy, so that nothing of this log is touched before a person has looked. */
  private void check(Context ctx) {
    String id = Asking.text(ctx, "file");
    Path other = uploads.of(id);
    Path copy = uploads.fresh(String.valueOf(log.file().getFileName()));
    log.backup(copy);
    try (Logbook tried = Logbook.openExisting(copy, options.clock())) {
      send(
          ctx,
          id,
          other,
          Merge.into(tried, Pages.by(ctx, options.person())).from(other, Resolution.UNDECIDED),
          false);
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
          Merge.into(log, Pages.by(ctx, options.person()))
              .sure("true".equals(ctx.formParam("sure")))
              .joining("true".equals(ctx.formParam("join")))
              .confirmedBy(ImportPages.SURE)
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
