package charline.web.pages;

import charline.answer.Precautions;
import charline.log.Logbook;
import charline.log.VoidCheck;
import charline.log.VoidUpkeep;
import charline.trial.Board;
import charline.trial.FamilyFacts;
import charline.trial.Rig;
import charline.trial.WoodFacts;
import charline.web.entry.SetupForms;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.wording.CircumstancesText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/** The page where rigs, power checks, boards and finishes are set up. */
public final class SetUpPages {
  static final Map<String, String> PLACES =
      Map.of(
          "rig",
          "rigs",
          "check",
          "rigs",
          "upkeep",
          "rigs",
          "board",
          "boards",
          "finish",
          "finishes",
          "wood",
          "words",
          "family",
          "words");

  private final Logbook log;
  private final LiveModels models;
  private final SetupForms setUps;
  private final String person;
  private final Pages pages;

  SetUpPages(Logbook log, LiveModels models, SetupForms setUps, String person, Pages pages) {
    this.log = log;
    this.models = models;
    this.setUps = setUps;
    this.person = person;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/set-up", ctx -> show(ctx, "", "", false));
    routes.post("/set-up/rig", taking("rig", setUps::rig));
    routes.post("/set-up/check", taking("check", setUps::check));
    routes.post("/set-up/upkeep", taking("upkeep", setUps::upkeep));
    routes.post("/set-up/board", taking("board", setUps::board));
    routes.post("/set-up/finish", taking("finish", setUps::finish));
    routes.post("/set-up/wood", taking("wood", setUps::wood));
    routes.post("/set-up/family", taking("family", setUps::family));
  }

  /**
   * The page's content.
   *
   * @param known what must be known of each finish before the beam is on, by its name
   * @param voidBoards boards that count no more
   * @param voidChecks power checks that count no more, by the name of the rig
   * @param voidUpkeep upkeep that counts no more, likewise
   * @param form which form was refused, blank for none
   * @param trouble why
   * @param doubtful true if the person may say that they are sure
   * @param given what was typed in the refused form
   */
  public record SetUpView(
      LogSnapshot shelf,
      List<WoodFacts> woods,
      List<FamilyFacts> families,
      Map<String, Precautions> known,
      List<Board> voidBoards,
      Map<String, List<VoidCheck>> voidChecks,
      Map<String, List<VoidUpkeep>> voidUpkeep,
      String form,
      String trouble,
      boolean doubtful,
      Map<String, String> given) {
    /** What a field of a form shows at first. */
    public String given(String ofForm, String field) {
      return ofForm.equals(form) ? given.getOrDefault(field, "") : "";
    }

    /** What is usual of a rig in how passes are made, blank if nothing is known. */
    public String made(Rig rig) {
      return String.join(", ", CircumstancesText.facts(rig).values());
    }

    /** Poison and fire in the coats of a finish, blank where there is none. */
    public String poison(String finish) {
      return PoisonLine.of(known.getOrDefault(finish, Precautions.NONE));
    }

    /** The page of a finish. */
    public String link(String finish) {
      return "/finish?name=" + Links.escaped(finish);
    }

    /** Fields of a stack of coats. */
    public List<Integer> coats() {
      return List.of(1, 2, 3, 4, 5, 6);
    }
  }

  private Handler taking(String form, BiConsumer<UnaryOperator<String>, String> work) {
    return ctx ->
        new SentForm(ctx, person)
            .take(
                by -> work.accept(ctx::formParam, by),
                (trouble, doubtful) -> show(ctx, form, trouble, doubtful),
                () -> "/set-up#" + PLACES.get(form));
  }

  private void show(Context ctx, String form, String trouble, boolean doubtful) {
    Map<String, String> given = form.isEmpty() ? Map.of() : SentForm.given(ctx);
    pages.send(
        ctx,
        "set-up",
        pages.frame(ctx, "Set up", "/set-up", "refusal.js", "coats.js"),
        Map.of(
            "view",
            new SetUpView(
                models.shelf(),
                log.reference().woods(),
                log.reference().families(),
                Precautions.ofEach(log, models.shelf().finishes()),
                log.voidBoards(),
                ofRigs(log.rigEntries()::voidChecks),
                ofRigs(log.rigEntries()::voidUpkeep),
                form,
                trouble,
                doubtful,
                given)));
  }

  private <T> Map<String, List<T>> ofRigs(Function<Rig, List<T>> what) {
    Map<String, List<T>> byRig = new HashMap<>();
    models.shelf().rigs().forEach(rig -> byRig.put(rig.name(), what.apply(rig)));
    return byRig;
  }
}
