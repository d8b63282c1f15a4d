package charline.web.pages;

import charline.answer.Answers;
import charline.answer.Precautions;
import charline.answer.Strata;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.web.security.HttpRefusal;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What pages that answer a question about trials share: which light is meant, why the beam stays
 * off, what is known already, and that an answer is being computed.
 */
public final class AnswerPages {
  private final LiveModels models;
  private final LiveAnswers live;
  private final PageOptions options;
  private final Asking asking;
  private final Pages pages;

  AnswerPages(
      LiveModels models, LiveAnswers live, PageOptions options, Asking asking, Pages pages) {
    this.models = models;
    this.live = live;
    this.options = options;
    this.asking = asking;
    this.pages = pages;
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
}
