package charline.web.pages;

import charline.answer.Answers;
import charline.answer.Dialled;
import charline.answer.Precautions;
import charline.answer.Strata;
import charline.answer.TrialCase;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.exposure.Settings;
import charline.log.Logbook;
import charline.paper.Paper;
import charline.paper.SheetStamp;
import charline.paper.WindowSheet;
import charline.quantity.Invariant;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.web.security.Headers;
import charline.web.security.HttpRefusal;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.wording.DriftText;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;
import charline.wording.SheetCautions;
import gg.jte.Content;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pages of windows: every stratum, one of them with its map, and its sheet. */
public final class WindowPages {
  private static final String COMPUTING = "being computed";

  private final Logbook log;
  private final LiveModels models;
  private final LiveAnswers live;
  private final PageOptions options;
  private final Pages pages;
  private final Asking asking;

  WindowPages(
      Logbook log,
      LiveModels models,
      LiveAnswers live,
      PageOptions options,
      Asking asking,
      Pages pages) {
    this.log = log;
    this.models = models;
    this.live = live;
    this.options = options;
    this.pages = pages;
    this.asking = asking;
  }

  void add(RoutesConfig routes) {
    routes.get("/window", this::window);
    routes.get("/window/at", this::at);
    routes.get("/sheet", this::sheet);
    routes.get("/sheet/preview", this::preview);
  }

  /**
   * One line of the list.
   *
   * @param verdict in a word, or that it is being worked out
   * @param notValid why the window must not be used any more, if so
   * @param renewing true while a newer verdict is computed
   */
  public record Listed(
      String link,
      String words,
      int patches,
      String verdict,
      Optional<Caution> notValid,
      boolean renewing) {
    /** Whether no verdict was ever known. */
    public boolean pending() {
      return verdict.equals(COMPUTING);
    }
  }

  private void window(Context ctx) {
    if (ctx.queryParam("family") == null) {
      list(ctx);
      return;
    }
    Answers answers = answers();
    TrialQuestion question = asking.question(ctx);
    List<Stratum> candidates = candidates(answers, question);
    if (candidates.size() > 1) {
      chooseLight(ctx, "/window", candidates);
      return;
    }
    Stratum stratum = candidates.get(0);
    if (barred(ctx, answers, stratum, HttpStatus.OK)) {
      return;
    }
    Frame frame =
        pages.frame(
            ctx, stratum.words(), "/window", "live.css", "window.css", "map.js", "renew.js");
    try {
      TrialQuestion asked = question.with(Asking.knobs(ctx));
      Optional<Answer> known = answer(asked);
      if (known.isEmpty()) {
        computing(ctx, frame, stratum.words(), asked);
        return;
      }
      Answer answer = known.get();
      WindowAnswer window = answer.window();
      pages.send(
          ctx,
          "window",
          frame,
          Map.of(
              "view",
              WindowView.of(
                  window,
                  limits(window.subject().question(), window.found().patches()),
                  answer.behind(),
                  DriftText.notValid(window.applicability().validity()),
                  PrecautionText.headline(window.precautions()),
                  SheetCautions.reserved(window))));
    } catch (Refusal e) {
      if (e.missing().equals(Optional.of(Missing.SCAN_WIDTH))) {
        pages.send(
            ctx, "window-width", frame, Map.of("sentence", e.getMessage(), "stratum", stratum));
      } else {
        throw e;
      }
    }
  }

  /** Says why the beam stays off, if it does, in place of a window or a sheet. */
  boolean barred(Context ctx, Answers answers, Stratum stratum, HttpStatus status) {
    Precautions known = answers.precautions(stratum);
    if (known.barred()) {
      noBeam(ctx, stratum.words(), known, status);
    }
    return known.barred();
  }

  /** Says why the beam stays off. */
  void noBeam(Context ctx, String title, Precautions known, HttpStatus status) {
    ctx.status(status);
    pages.send(
        ctx,
        "no-beam",
        pages.frame(ctx, title, "/window"),
        Map.of(
            "title",
            title,
            "poison",
            PrecautionText.headline(known).orElse(""),
            "reason",
            NoBeamText.reason(known.bars()),
            "nextStep",
            NoBeamText.nextStep(known.bars(), PoisonLine.RECORD_SAMPLE),
            "cautions",
            known.cautions()));
  }

  /**
   * A kind of light to choose.
   *
   * @param link the same page with it
   * @param words what was burned with it
   */
  public record LightChoice(String link, String words, int patches) {}

  /** The fields that ask the same again. */
  LimitFields limits(TrialQuestion question, List<Patch> patches) {
    return LimitFields.of(
        question,
        patches,
        models.shelf().rigs().stream().map(Rig::name).toList(),
        asking.priors().text(question.priors()));
  }

  /** The patches of a stratum. */
  List<Patch> patches(Stratum stratum) {
    return models.shelf().trials().of(stratum);
  }

  /** Trials with different light are never judged together: the person says which. */
  void chooseLight(Context ctx, String path, List<Stratum> candidates) {
    Strata trials = models.shelf().trials();
    pages.send(
        ctx,
        "window-light",
        pages.frame(ctx, "Which light", path),
        Map.of(
            "choices",
            candidates.stream()
                .map(
                    stratum ->
                        new LightChoice(
                            path + "?" + Links.of(stratum) + Asking.rest(ctx),
                            stratum.words(),
                            trials.of(stratum).size()))
                .toList()));
  }

  private void list(Context ctx) {
    Answers answers = answers();
    Instant deadline = Instant.now().plus(options.patience());
    List<Listed> rows =
        models.shelf().strata().entrySet().stream()
            .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
            .map(e -> listed(answers, e.getKey(), e.getValue().size(), deadline))
            .toList();
    List<Caution> notValid =
        rows.stream().flatMap(row -> row.notValid().stream()).distinct().toList();
    pages.send(
        ctx,
        "windows",
        pages.frame(ctx, "Window", "/window", "renew.js"),
        Map.of(
            "rows",
            rows,
            "notValid",
            notValid,
            "renewing",
            rows.stream().anyMatch(Listed::renewing)));
  }

  private Listed listed(Answers answers, Stratum stratum, int patches, Instant deadline) {
    if (answers.precautions(stratum).barred()) {
      return row(stratum, patches, NoBeamText.VERDICT, Optional.empty(), false);
    }
    try {
      LastKnown.Known<LiveAnswers.Verdict> known =
          live.verdicts().of(stratum, Duration.between(Instant.now(), deadline));
      return row(
          stratum,
          patches,
          known.value().map(LiveAnswers.Verdict::words).orElse(COMPUTING),
          known.value().flatMap(LiveAnswers.Verdict::notValid),
          known.renewing());
    } catch (Refusal e) {
      return row(
          stratum,
          patches,
          e.missing().equals(Optional.of(Missing.SCAN_WIDTH))
              ? "needs a scan width"
              : "cannot be judged",
          Optional.empty(),
          false);
    }
  }

  private static Listed row(
      Stratum stratum, int patches, String verdict, Optional<Caution> notValid, boolean renewing) {
    return new Listed(
        "/window?" + Links.of(stratum), stratum.words(), patches, verdict, notValid, renewing);
  }

  Answers answers() {
    return live.now();
  }

  static List<Stratum> candidates(Answers answers, TrialQuestion question) {
    try {
      return answers.candidates(question);
    } catch (Refusal e) {
      throw e.kind() == Refusal.Kind.NOTHING_FOUND ? HttpRefusal.notThere(e.getMessage()) : e;
    }
  }

  /**
   * A window with all that goes with it.
   *
   * @param behind what it does not hold yet, in a line, while a newer one is worked out
   */
  record Answer(WindowAnswer window, Optional<String> behind) {}

  /** The newest answer that is ready; empty where none ever was. */
  Optional<Answer> answer(TrialQuestion question) {
    LastKnown.Known<WindowAnswer> known = live.windows().of(question, options.patience());
    return known
        .value()
        .map(
            window ->
                new Answer(
                    window,
                    known.renewing()
                        ? Optional.of(StalenessText.of(models.behind(window.subject().trials())))
                        : Optional.empty()));
  }

  /** Says that an answer is computed; the page then looks again by itself. */
  void computing(Context ctx, Frame frame, String title, TrialQuestion question) {
    Precautions known = answers().precautions(question);
    pages.send(
        ctx,
        "computing",
        frame,
        Map.of(
            "title",
            title,
            "poison",
            PrecautionText.headline(known).orElse(""),
            "cautions",
            known.cautions()));
  }

  /** What a place on the map does. */
  private void at(Context ctx) {
    Answers answers = answers();
    TrialQuestion question = asking.question(ctx);
    candidates(answers, question);
    Precautions known = answers.precautions(question);
    if (known.barred()) {
      Map<String, Object> words = new LinkedHashMap<>();
      LiveRiskText.say(
          words,
          "stop",
          "No beam on this finish yet",
          NoBeamText.inFull(known.bars(), PoisonLine.RECORD_SAMPLE));
      Pages.json(ctx, words);
      return;
    }
    int passes = (int) number(ctx, "passes", 1, 999);
    TrialCase subject = answers.choose(question.with(Asking.knobs(ctx)));
    RigSetup bench = subject.bench();
    Requirements asked = subject.asked();
    Stratum stratum = subject.trials().stratum();
    Settings settings;
    List<Doubt> doubts;
    try {
      double power = Measure.parse(Asking.text(ctx, "power"), Quantity.SHARE).value();
      doubts = Plausibility.aboutTypedShare(Asking.text(ctx, "power"));
      Invariant.positive("Power", power, "%");
      Invariant.within("Power", power, 0, 100, "%");
      double speed = Measure.parse(Asking.text(ctx, "speed"), Quantity.SPEED).value();
      Invariant.positive("Speed", speed, "mm/s");
      settings = bench.settings(power, speed);
    } catch (Refusal e) {
      Map<String, Object> words = new LinkedHashMap<>();
      LiveRiskText.refuse(words, e.getMessage()); // in place of figures of another setting
      Pages.json(ctx, words);
      return;
    }
    Map<String, Object> words =
        LiveRiskText.of(
            stratum,
            models.of(stratum, question, options.patience()).asking(subject.trials().asked()),
            new Dialled(bench.rig(), settings, bench.at(), passes, bench.strokes()),
            asked);
    LiveRiskText.doubt(words, doubts);
    Pages.json(ctx, words);
  }

  private static double number(Context ctx, String name, double low, double high) {
    String text = Asking.text(ctx, name);
    if (!text.matches("\\d{1,7}(\\.\\d{1,6})?")
        || Double.parseDouble(text) < low
        || Double.parseDouble(text) > high) {
      throw Refusal.usage("%s must be a number above 0, not \"%s\".".formatted(name, text));
    }
    return Double.parseDouble(text);
  }

  /** The sheet in a frame, with the way back and the way to the printer beside it. */
  private void preview(Context ctx) {
    Answers answers = answers();
    TrialQuestion question = asking.question(ctx).with(Asking.knobs(ctx));
    List<Stratum> candidates = candidates(answers, question);
    if (candidates.size() > 1) {
      chooseLight(ctx, "/sheet/preview", candidates);
      return;
    }
    if (barred(ctx, answers, candidates.get(0), HttpStatus.CONFLICT)) {
      return;
    }
    pages.send(
        ctx,
        "sheet-preview",
        pages.frame(ctx, "Sheet", "/window", "work.css", "preview.js"),
        Map.of("stratum", candidates.get(0), "query", Asking.query(candidates.get(0), question)));
  }

  private void sheet(Context ctx) {
    Answers answers = answers();
    TrialQuestion question = asking.question(ctx);
    List<Stratum> candidates = candidates(answers, question);
    if (candidates.size() > 1) {
      chooseLight(ctx, "/sheet", candidates);
      return;
    }
    if (barred(ctx, answers, candidates.get(0), HttpStatus.CONFLICT)) {
      return;
    }
    TrialQuestion asked = question.with(Asking.knobs(ctx));
    Optional<Answer> known = answer(asked);
    if (known.isEmpty()) {
      computing(
          ctx,
          pages.frame(ctx, "Sheet", "/window", "renew.js"),
          "Sheet: " + candidates.get(0).words(),
          asked);
      Headers.allowFrame(ctx);
      return;
    }
    Answer answer = known.get();
    List<Caution> cautions = new ArrayList<>();
    DriftText.notValid(answer.window().applicability().validity()).ifPresent(cautions::add);
    answer
        .behind()
        .map(line -> new Caution("Not up to date", line, "the log"))
        .ifPresent(cautions::add);
    cautions.addAll(SheetCautions.reserved(answer.window()));
    SheetStamp stamp =
        new SheetStamp(
            String.valueOf(log.file().getFileName()),
            options.version(),
            OffsetDateTime.now(options.clock()).truncatedTo(ChronoUnit.SECONDS),
            Optional.ofNullable(ctx.queryParam("by")).filter(b -> !b.isBlank()));
    Optional<String> script =
        Optional.ofNullable(ctx.queryParam("print"))
            .filter("yes"::equals)
            .map(yes -> Assets.address("print.js"));
    Content head =
        Pages.content("sheet-head", Map.of("icon", Assets.address("icon.svg"), "script", script));
    Pages.send(ctx, WindowSheet.of(answer.window(), cautions, stamp).html(Paper.ANY, head));
    Headers.allowFrame(ctx);
  }
}
