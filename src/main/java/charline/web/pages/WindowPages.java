package charline.web.pages;

import charline.answer.Answers;
import charline.answer.Dialled;
import charline.answer.Precautions;
import charline.answer.TrialCase;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.exposure.Settings;
import charline.quantity.Invariant;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Caution;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.Stratum;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.wording.DriftText;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;
import charline.wording.SheetCautions;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pages of windows: every stratum, and one of them with its map. */
public final class WindowPages {
  private static final String COMPUTING = "being computed";

  private final AnswerPages before;
  private final LiveModels models;
  private final LiveAnswers live;
  private final PageOptions options;
  private final Pages pages;
  private final Asking asking;

  WindowPages(
      AnswerPages before,
      LiveModels models,
      LiveAnswers live,
      PageOptions options,
      Asking asking,
      Pages pages) {
    this.before = before;
    this.models = models;
    this.live = live;
    this.options = options;
    this.pages = pages;
    this.asking = asking;
  }

  void add(RoutesConfig routes) {
    routes.get("/window", this::window);
    routes.get("/window/at", this::at);
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
    Answers answers = before.answers();
    TrialQuestion question = asking.question(ctx);
    List<Stratum> candidates = AnswerPages.candidates(answers, question);
    if (candidates.size() > 1) {
      before.chooseLight(ctx, "/window", candidates);
      return;
    }
    Stratum stratum = candidates.get(0);
    if (before.barred(ctx, answers, stratum, HttpStatus.OK)) {
      return;
    }
    Frame frame =
        pages.frame(
            ctx, stratum.words(), "/window", "live.css", "window.css", "map.js", "renew.js");
    try {
      TrialQuestion asked = question.with(Asking.knobs(ctx));
      Optional<AnswerPages.Answer> known = before.answer(asked);
      if (known.isEmpty()) {
        before.computing(ctx, frame, stratum.words(), asked);
        return;
      }
      AnswerPages.Answer answer = known.get();
      WindowAnswer window = answer.window();
      pages.send(
          ctx,
          "window",
          frame,
          Map.of(
              "view",
              WindowView.of(
                  window,
                  before.limits(window.subject().question(), window.found().patches()),
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

  private void list(Context ctx) {
    Answers answers = before.answers();
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

  /** What a place on the map does. */
  private void at(Context ctx) {
    Answers answers = before.answers();
    TrialQuestion question = asking.question(ctx);
    AnswerPages.candidates(answers, question);
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
}
