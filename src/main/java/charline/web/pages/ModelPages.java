package charline.web.pages;

import charline.answer.Answers;
import charline.answer.ModelAnswer;
import charline.answer.RemovalAnswer;
import charline.answer.TrialQuestion;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pages of the burn-onset and the removal model. */
record ModelPages(
    LiveAnswers live, AnswerPages before, Asking asking, PageOptions options, Pages pages) {
  void add(RoutesConfig routes) {
    routes.get("/onset", ctx -> show(ctx, "/onset"));
    routes.get("/removal", ctx -> show(ctx, "/removal"));
  }

  private void show(Context ctx, String path) {
    Answers answers = live.now();
    TrialQuestion question = asking.question(ctx).with(Asking.knobs(ctx));
    List<Stratum> candidates = AnswerPages.candidates(answers, question);
    if (candidates.size() > 1) {
      before.chooseLight(ctx, path, candidates);
      return;
    }
    boolean onset = path.equals("/onset");
    String title = (onset ? "Burn onset: " : "Removal: ") + candidates.get(0).words();
    Frame frame = pages.frame(ctx, title, "/window", "work.css", "window.css", "renew.js");
    Optional<RemovalAnswer> removal = Optional.empty();
    Optional<ModelAnswer> answer;
    boolean renewing;
    if (onset) {
      LastKnown.Known<ModelAnswer> known = live.onsets().of(question, options.patience());
      answer = known.value();
      renewing = known.renewing();
    } else {
      LastKnown.Known<RemovalAnswer> known = live.removals().of(question, options.patience());
      removal = known.value();
      answer = removal.map(RemovalAnswer::model);
      renewing = known.renewing();
    }
    if (answer.isEmpty()) {
      before.computing(ctx, frame, title, question);
      return;
    }
    pages.send(
        ctx,
        "model",
        frame,
        Map.of(
            "view",
            ModelView.of(
                answer.get(),
                removal,
                renewing,
                passes(ctx),
                before.limits(
                    answer.get().subject().question(),
                    answer.get().subject().trials().patches()))));
  }

  private static int passes(Context ctx) {
    String text = Asking.text(ctx, "passes");
    if (!text.isEmpty() && !text.matches("[1-9]\\d{0,2}")) {
      throw Refusal.usage("Passes must be a whole number, 1 or more, not \"%s\".".formatted(text));
    }
    return text.isEmpty() ? 1 : Integer.parseInt(text);
  }
}
