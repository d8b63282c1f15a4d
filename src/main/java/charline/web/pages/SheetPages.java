package charline.web.pages;

import charline.answer.Answers;
import charline.answer.TrialQuestion;
import charline.log.Logbook;
import charline.paper.Paper;
import charline.paper.SheetStamp;
import charline.paper.WindowSheet;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.web.security.Headers;
import charline.wording.DriftText;
import charline.wording.SheetCautions;
import gg.jte.Content;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The sheet of a window, to print, and its preview. */
record SheetPages(
    Logbook log, AnswerPages before, PageOptions options, Asking asking, Pages pages) {
  void add(RoutesConfig routes) {
    routes.get("/sheet", this::sheet);
    routes.get("/sheet/preview", this::preview);
  }

  /** The sheet in a frame, with the way back and the way to the printer beside it. */
  private void preview(Context ctx) {
    Answers answers = before.answers();
    TrialQuestion question = asking.question(ctx).with(Asking.knobs(ctx));
    List<Stratum> candidates = AnswerPages.candidates(answers, question);
    if (candidates.size() > 1) {
      before.chooseLight(ctx, "/sheet/preview", candidates);
      return;
    }
    if (before.barred(ctx, answers, candidates.get(0), HttpStatus.CONFLICT)) {
      return;
    }
    pages.send(
        ctx,
        "sheet-preview",
        pages.frame(ctx, "Sheet", "/window", "work.css", "preview.js"),
        Map.of("stratum", candidates.get(0), "query", Asking.query(candidates.get(0), question)));
  }

  private void sheet(Context ctx) {
    Answers answers = before.answers();
    TrialQuestion question = asking.question(ctx);
    List<Stratum> candidates = AnswerPages.candidates(answers, question);
    if (candidates.size() > 1) {
      before.chooseLight(ctx, "/sheet", candidates);
      return;
    }
    if (before.barred(ctx, answers, candidates.get(0), HttpStatus.CONFLICT)) {
      return;
    }
    TrialQuestion asked = question.with(Asking.knobs(ctx));
    Optional<AnswerPages.Answer> known = before.answer(asked);
    if (known.isEmpty()) {
      before.computing(
          ctx,
          pages.frame(ctx, "Sheet", "/window", "renew.js"),
          "Sheet: " + candidates.get(0).words(),
          asked);
      Headers.allowFrame(ctx);
      return;
    }
    AnswerPages.Answer answer = known.get();
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
