package charline.web.pages;

import charline.answer.Answers;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.quote.Quoting;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.wording.DriftText;
import charline.wording.PrecautionText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The page of a job's hours, with every part and every field that they hang on. */
record QuotePages(AnswerPages before, Asking asking, Pages pages) {
  /** Any job: only its usual times are looked at. */
  private static final double ANY_AREA = 1;

  void add(RoutesConfig routes) {
    routes.get("/quote", this::quote);
  }

  private void quote(Context ctx) {
    Answers answers = before.answers();
    TrialQuestion question = asking.question(ctx);
    List<Stratum> candidates = AnswerPages.candidates(answers, question);
    if (candidates.size() > 1) {
      before.chooseLight(ctx, "/quote", candidates);
      return;
    }
    Stratum stratum = candidates.get(0);
    if (before.barred(ctx, answers, stratum, HttpStatus.OK)) {
      return;
    }
    Frame frame =
        pages.frame(ctx, "Quote, " + stratum.words(), "/window", "window.css", "renew.js");
    TrialQuestion asked = question.with(Asking.knobs(ctx));
    String query = Asking.query(stratum, asked);
    LimitFields limits = before.limits(asked, before.patches(stratum));
    QuoteForm form = new QuoteForm(ctx);
    QuoteView.Form fields =
        new QuoteView.Form(form.times(Quoting.usual(ANY_AREA)), form.prices(), form.lead());
    Map<String, Object> values = new HashMap<>();
    Optional<Caution> notValid = Optional.empty();
    Optional<String> behind = Optional.empty();
    Optional<String> poison = PrecautionText.headline(answers.precautions(stratum));
    QuoteView view;
    if (asked.job().isEmpty()) {
      view = QuoteView.asking(stratum, query, limits, fields);
    } else {
      Optional<AnswerPages.Answer> known = before.answer(asked);
      if (known.isEmpty()) {
        before.computing(ctx, frame, "Quote: " + stratum.words(), asked);
        return;
      }
      AnswerPages.Answer answer = known.get();
      WindowAnswer window = answer.window();
      behind = answer.behind();
      notValid = DriftText.notValid(window.applicability().validity());
      view =
          QuoteView.of(
              answers.quote(window, form.quoting(asked.job().get().areaSquareMetres())),
              form.rates(),
              query,
              limits,
              fields);
    }
    values.put("view", view);
    values.put("notValid", notValid);
    values.put("behind", behind);
    values.put("poison", poison);
    pages.send(ctx, "quote", frame, values);
  }
}
