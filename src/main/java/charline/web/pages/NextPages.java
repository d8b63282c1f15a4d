package charline.web.pages;

import charline.answer.Answers;
import charline.answer.NextAnswer;
import charline.answer.PatchesWanted;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.log.Logbook;
import charline.log.PlannedPatch;
import charline.paper.BenchList;
import charline.paper.SheetStamp;
import charline.plan.Site;
import charline.record.Plans;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.FamilyFacts;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.trial.WoodFacts;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveAnswers.PlanQuestion;
import charline.web.live.LiveModels;
import charline.web.security.HttpRefusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The pages of the patches to burn next, and of those that are planned. */
public final class NextPages {
  private static final List<String> COUNTS = List.of("3", "6", "12", "24");

  /** More than these are typed. */
  private static final int MOST_OFFERED = 12;

  private final Logbook log;
  private final LiveModels models;
  private final LiveAnswers live;
  private final AnswerPages before;
  private final Asking asking;
  private final PageOptions options;
  private final Pages pages;
  private final PlanTaps taps;

  NextPages(
      Logbook log,
      LiveModels models,
      LiveAnswers live,
      AnswerPages before,
      Asking asking,
      PageOptions options,
      Pages pages) {
    this.log = log;
    this.models = models;
    this.live = live;
    this.before = before;
    this.asking = asking;
    this.options = options;
    this.pages = pages;
    taps = new PlanTaps(log, options);
  }

  void add(RoutesConfig routes) {
    routes.get("/next", this::next);
    routes.post("/next/burn", this::burn);
    routes.post("/next/reserve", this::reserve);
    routes.get("/plans", ctx -> plans(ctx, ""));
    routes.post("/plans/give-up", this::giveUp);
  }

  /**
   * How the list is asked for.
   *
   * @param on offcut, piece or spare
   * @param offered boards of the wood
   * @param boards others at hand, with commas between
   */
  public record Wanted(
      LimitFields limits, String count, String on, List<Offered> offered, String boards) {
    /** How many may be asked for. */
    public List<String> counts() {
      return COUNTS;
    }
  }

  /** A board that may be at hand. */
  public record Offered(String name, boolean chosen) {}

  /** A kind of trials to choose. */
  public record Choice(String link, String words, int patches) {}

  private void next(Context ctx) {
    if (ctx.queryParam("family") == null) {
      choose(ctx);
      return;
    }
    show(ctx, "");
  }

  private void choose(Context ctx) {
    List<Choice> tried =
        models.shelf().strata().entrySet().stream()
            .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
            .map(
                e ->
                    new Choice(
                        "/next?" + Links.of(e.getKey()), e.getKey().words(), e.getValue().size()))
            .toList();
    pages.send(
        ctx,
        "next-choose",
        pages.frame(ctx, "Burn next", "/window", "work.css"),
        Map.of(
            "tried",
            tried,
            "plans",
            log.planned().open().size(),
            "families",
            log.reference().families().stream().map(FamilyFacts::name).toList(),
            "woods",
            log.reference().woods().stream().map(WoodFacts::name).toList(),
            "rigs",
            models.shelf().rigs().stream().map(r -> r.name()).toList()));
  }

  private Optional<PlanQuestion> asked(Context ctx, Answers answers) {
    TrialQuestion question = asking.question(ctx).with(Asking.knobs(ctx));
    List<Stratum> candidates;
    try {
      candidates = answers.candidates(question);
    } catch (Refusal e) {
      if (e.kind() != Refusal.Kind.NOTHING_FOUND) {
        throw e;
      }
      candidates = List.of(); // the first patches of all
    }
    if (candidates.size() > 1) {
      before.chooseLight(ctx, "/next", candidates);
      return Optional.empty();
    }
    return Optional.of(new PlanQuestion(question, wanted(ctx)));
  }

  private PatchesWanted wanted(Context ctx) {
    String count = Asking.text(ctx, "count");
    if (!count.isEmpty() && !COUNTS.contains(count)) {
      throw Refusal.usage("Ask for 3, 6, 12 or 24 patches, not \"%s\".".formatted(count));
    }
    String on = Asking.text(ctx, "on");
    boolean spare = on.equals("spare");
    if (spare && Asking.text(ctx, "piece").isEmpty()) {
      throw Refusal.usage("A piece that may not brown must be named; choose the piece.");
    }
    List<Board> boards =
        Stream.concat(
                ctx.queryParams("board").stream(),
                Arrays.stream(Asking.text(ctx, "boards").split(",")))
            .map(String::strip)
            .filter(name -> !name.isEmpty())
            .map(log::board)
            .distinct()
            .toList();
    return new PatchesWanted(
        count.isEmpty() ? PatchesWanted.USUAL.count() : Integer.parseInt(count),
        spare || on.equals("piece") ? Site.PIECE : Site.OFFCUT,
        boards);
  }

  private void show(Context ctx, String trouble) {
    Answers answers = live.now();
    Optional<PlanQuestion> asked = asked(ctx, answers);
    if (asked.isEmpty()) {
      return;
    }
    TrialQuestion question = asked.get().question();
    Precautions known = answers.precautions(question);
    String title = question.named().family() + " on " + question.named().wood();
    if (known.barred()) {
      before.noBeam(ctx, title, known, HttpStatus.OK);
      return;
    }
    Frame frame = pages.frame(ctx, "Burn next: " + title, "/window", "work.css", "renew.js");
    LastKnown.Known<NextAnswer> answer = live.plans().of(asked.get(), options.patience());
    if (answer.value().isEmpty()) {
      before.computing(ctx, frame, "Burn next: " + title, question);
      return;
    }
    NextAnswer next = answer.value().get();
    Map<String, Object> values = new LinkedHashMap<>();
    values.put(
        "view",
        BurnNextView.of(next, answer.renewing(), taps.open(next.stratum()), query(ctx, next)));
    values.put(
        "wanted",
        new Wanted(
            before.limits(question, before.patches(next.stratum())),
            String.valueOf(asked.get().wanted().count()),
            Asking.text(ctx, "on"),
            offered(next.stratum(), ctx.queryParams("board")),
            Asking.text(ctx, "boards")));
    values.put("trouble", trouble);
    pages.send(ctx, "next", frame, values);
  }

  /** Boards of the wood: some not burned yet, those burned last, and those that were chosen. */
  private List<Offered> offered(Stratum stratum, List<String> chosen) {
    List<Patch> burned = models.shelf().strata().getOrDefault(stratum, List.of());
    Set<Board> used = new LinkedHashSet<>();
    for (int i = burned.size() - 1; i >= 0; i--) {
      used.add(burned.get(i).board());
    }
    Stream<Board> unused =
        log.boards().stream()
            .filter(board -> stratum.covers(board.wood()) && !used.contains(board))
            .limit(MOST_OFFERED / 2);
    return Stream.concat(
            Stream.concat(unused, used.stream()).map(Board::name).limit(MOST_OFFERED),
            chosen.stream())
        .distinct()
        .map(name -> new Offered(name, chosen.contains(name)))
        .toList();
  }

  private static String query(Context ctx, NextAnswer next) {
    StringBuilder query = new StringBuilder(Asking.query(next.stratum(), next.question()));
    for (String name : List.of("count", "on", "boards")) {
      String value = Asking.text(ctx, name);
      if (!value.isEmpty()) {
        query.append('&').append(name).append('=').append(Links.escaped(value));
      }
    }
    ctx.queryParams("board").forEach(name -> query.append("&board=").append(Links.escaped(name)));
    return query.toString();
  }

  private NextAnswer newest(Context ctx) {
    PlanQuestion asked =
        asked(ctx, live.now())
            .orElseThrow(() -> Refusal.usage("Choose the light first; go back to the list."));
    Precautions known = live.now().precautions(asked.question());
    if (known.barred()) {
      throw Refusal.nothingFound("The beam stays off this coat, so no patch is planned.");
    }
    return PlanTaps.newest(live.plans().of(asked, taps.patience()));
  }

  /** Plans one patch of the list, then goes where it is recorded. */
  private void burn(Context ctx) {
    try {
      taps.burn(ctx, newest(ctx));
    } catch (Refusal e) {
      ctx.status(409);
      show(ctx, e.getMessage());
    }
  }

  /** Plans the whole list; with a bench list to print where it is asked for. */
  private void reserve(Context ctx) {
    NextAnswer answer;
    List<PlannedPatch> plans;
    try {
      answer = newest(ctx);
      plans = log.planned().reserve(taps.entries(ctx, answer).all());
    } catch (Refusal e) {
      ctx.status(409);
      show(ctx, e.getMessage());
      return;
    }
    if (ctx.formParam("print") == null) {
      ctx.redirect("/plans", HttpStatus.SEE_OTHER);
      return;
    }
    SheetStamp stamp =
        new SheetStamp(
            String.valueOf(log.file().getFileName()),
            options.version(),
            taps.moment(),
            Optional.of(taps.by(ctx)));
    Pages.send(
        ctx,
        new BenchList(
                answer.stratum(),
                answer.next(),
                plans.stream().map(PlannedPatch::code).toList(),
                stamp,
                answer.precautions())
            .html());
  }

  private void plans(Context ctx, String trouble) {
    pages.send(
        ctx,
        "plans",
        pages.frame(ctx, "Planned patches", "/window", "work.css"),
        Map.of(
            "plans",
            log.planned().open().stream().map(BurnNextView.Plan::of).toList(),
            "trouble",
            trouble));
  }

  private void giveUp(Context ctx) {
    String code = Optional.ofNullable(ctx.formParam("code")).orElse("");
    String why = Optional.ofNullable(ctx.formParam("why")).orElse("").strip();
    try {
      if (code.isBlank()) {
        throw HttpRefusal.notThere("That plan is not there; go back to the planned patches.");
      }
      new Plans(log).giveUp(List.of(code), taps.by(ctx), why);
    } catch (Refusal e) {
      ctx.status(422);
      plans(ctx, e.getMessage());
      return;
    }
    ctx.redirect("/plans", HttpStatus.SEE_OTHER);
  }
}
