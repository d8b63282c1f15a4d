package charline.web.pages;

import charline.log.Change;
import charline.log.KeptPhoto;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.web.security.HttpRefusal;
import charline.wording.BeamText;
import charline.wording.CircumstancesText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The page of one patch: settings, readings, photos, history. */
public final class PatchPages {
  private static final int LONGEST_REASON = 300;

  private final Logbook log;
  private final Pages pages;
  private final String person;

  PatchPages(Logbook log, Pages pages, String person) {
    this.log = log;
    this.pages = pages;
    this.person = person;
  }

  void add(RoutesConfig routes) {
    routes.get("/patch/{code}", this::show);
    routes.post("/patch/{code}/void", this::strike);
  }

  /**
   * The page's content.
   *
   * @param trouble why the last thing asked was refused
   */
  public record PatchView(
      PatchEntry entry, List<KeptPhoto> photos, List<Change> history, Optional<String> trouble) {
    /** How it was made beside the settings, and how the spot ran, by what it is about. */
    public Map<String, String> made() {
      Map<String, String> made = new LinkedHashMap<>(CircumstancesText.facts(entry.patch()));
      made.putAll(new BeamText(entry.patch()).ofLines());
      return made;
    }
  }

  private void show(Context ctx) {
    show(ctx, Optional.empty());
  }

  private void show(Context ctx, Optional<String> trouble) {
    PatchEntry entry = patch(ctx);
    String code = entry.patch().code();
    pages.send(
        ctx,
        "patch",
        pages.frame(ctx, code, "/ask"),
        Map.of("view", new PatchView(entry, log.photos(code), log.history(code), trouble)));
  }

  private PatchEntry patch(Context ctx) {
    try {
      return log.patch(ctx.pathParam("code"));
    } catch (Refusal e) {
      throw HttpRefusal.notThere(e.getMessage());
    }
  }

  private void strike(Context ctx) {
    PatchEntry entry = patch(ctx);
    String why = Optional.ofNullable(ctx.formParam("why")).orElse("").strip();
    String by = Optional.ofNullable(ctx.formParam("by")).filter(b -> !b.isBlank()).orElse(person);
    if (why.length() > LONGEST_REASON) {
      throw Refusal.usage(
          "A reason must be at most %d characters long; shorten it.".formatted(LONGEST_REASON));
    }
    try {
      log.voidPatch(entry.patch().code(), by, why);
    } catch (Refusal e) {
      ctx.status(422);
      show(ctx, Optional.of(e.getMessage()));
      return;
    }
    ctx.redirect(Links.patch(entry.patch().code()), HttpStatus.SEE_OTHER);
  }
}
