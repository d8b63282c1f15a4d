package charline.web.pages;

import charline.answer.Light;
import charline.answer.NextAnswer;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.web.security.AccessFilter;
import charline.web.security.Client;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The first page, and the part of it that takes longer. */
final class HomePages {
  /** Of so many coats and woods beside the last, changes of the window are shown. */
  private static final int LATELY = 6;

  private final Logbook log;
  private final LiveModels models;
  private final LiveAnswers live;
  private final PageOptions options;
  private final Pages pages;
  private final PlanTaps taps;

  HomePages(Logbook log, LiveModels models, LiveAnswers live, PageOptions options, Pages pages) {
    this.log = log;
    this.models = models;
    this.live = live;
    this.options = options;
    this.pages = pages;
    taps = new PlanTaps(log, options);
  }

  void add(RoutesConfig routes) {
    routes.get("/", this::home);
    routes.get("/home/next", this::next);
    routes.post("/home/burn", this::burn);
  }

  private void home(Context ctx) {
    LogSnapshot shelf = models.shelf();
    pages.send(
        ctx,
        "home",
        pages.frame(ctx, "Home", "/", "home.css", "parts.js"),
        Map.of(
            "view",
            HomeView.of(
                shelf.trials().patches(),
                LocalDate.now(options.clock()),
                log.planned().open().size(),
                latest(shelf).map(p -> HomeView.Bench.of(p, Precautions.of(log, p.finish()))),
                RecordView.missing(shelf))));
  }

  private static Optional<Patch> latest(LogSnapshot shelf) {
    return shelf.trials().patches().stream()
        .max(Comparator.comparing(p -> p.burnedAt().toInstant()));
  }

  /** A part without a frame around it: the device puts it into its place. */
  private void next(Context ctx) {
    LogSnapshot shelf = models.shelf();
    Optional<Stratum> last = latest(shelf).flatMap(patch -> stratum(shelf, patch));
    Pages.send(
        ctx,
        Pages.filled(
            "home-next",
            Map.of(
                "view",
                last.flatMap(this::next),
                "changed",
                last.map(stratum -> changed(shelf, stratum)).orElse(List.of()),
                "token",
                AccessFilter.seatOf(ctx).map(Client::formToken).orElse(""))));
  }

  /**
   * Windows that changed or must not be used any more, of what was worked on lately beside what is
   * on the bench. Those that are not known yet are computed, and come with a later look.
   */
  private List<NextView.Changed> changed(LogSnapshot shelf, Stratum onTheBench) {
    return shelf.strata().entrySet().stream()
        .filter(e -> !e.getKey().equals(onTheBench))
        .sorted(Comparator.comparing(e -> lastBurned(e.getValue()), Comparator.reverseOrder()))
        .limit(LATELY)
        .map(Map.Entry::getKey)
        .filter(stratum -> !live.now().precautions(stratum).barred())
        .flatMap(stratum -> changed(stratum).stream())
        .toList();
  }

  private static Instant lastBurned(List<Patch> patches) {
    return patches.get(patches.size() - 1).burnedAt().toInstant();
  }

  private Optional<NextView.Changed> changed(Stratum stratum) {
    try {
      return live.verdicts()
          .of(stratum, Duration.ZERO)
          .value()
          .flatMap(verdict -> NextView.Changed.of(stratum, verdict));
    } catch (Refusal e) {
      return Optional.empty(); // the window page asks for what is missing
    }
  }

  private static Optional<Stratum> stratum(LogSnapshot shelf, Patch latest) {
    return shelf.strata().entrySet().stream()
        .filter(e -> e.getValue().stream().anyMatch(p -> p.id().equals(latest.id())))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  private Optional<NextView> next(Stratum stratum) {
    if (live.now().precautions(stratum).barred()) {
      return Optional.empty();
    }
    try {
      LastKnown.Known<WindowAnswer> known = known(stratum, options.patience());
      return Optional.of(
          known
              .value()
              .map(answer -> NextView.of(answer, known.renewing()))
              .orElseGet(() -> NextView.unknown(stratum)));
    } catch (Refusal e) {
      return Optional.empty(); // the window page asks for what is missing
    }
  }

  private LastKnown.Known<WindowAnswer> known(Stratum stratum, Duration patience) {
    return live.windows()
        .of(
            TrialQuestion.about(stratum.family(), stratum.wood()).with(Light.of(stratum)),
            patience);
  }

  /** Plans the patch of a card, then goes where it is recorded. */
  private void burn(Context ctx) {
    Stratum stratum =
        models.shelf().strata().keySet().stream()
            .filter(s -> s.family().equals(Asking.text(ctx, "family")))
            .filter(s -> s.wood().equals(Asking.text(ctx, "wood")))
            .filter(s -> Light.of(s).code().equals(Asking.text(ctx, "light")))
            .findFirst()
            .orElseThrow(() -> PlanTaps.gone(PlanTaps.said(ctx)));
    if (live.now().precautions(stratum).barred()) {
      throw PlanTaps.gone(PlanTaps.said(ctx));
    }
    WindowAnswer window = PlanTaps.newest(known(stratum, taps.patience()));
    taps.burn(
        ctx,
        new NextAnswer(
            window.subject().question(),
            stratum,
            Optional.of(window.subject()),
            window.next(),
            window.precautions()));
  }
}
