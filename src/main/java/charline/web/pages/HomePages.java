package charline.web.pages;

import charline.answer.Answers;
import charline.answer.Light;
import charline.answer.Precautions;
import charline.answer.TrialCase;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.window.LiveForecast;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** The first page, and the part of it that takes longer. */
final class HomePages {
  private static final Duration PATIENCE = Duration.ofMillis(300);

  private final Logbook log;
  private final LiveModels models;
  private final WindowPages windows;
  private final Clock clock;
  private final Pages pages;

  /** Models stay the same object for as long as their patches do, and so does what follows. */
  private final AtomicReference<Known> known = new AtomicReference<>();

  private record Known(LiveForecast models, LocalDate day, WindowAnswer answer) {}

  HomePages(Logbook log, LiveModels models, WindowPages windows, Clock clock, Pages pages) {
    this.log = log;
    this.models = models;
    this.windows = windows;
    this.clock = clock;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/", this::home);
    routes.get("/home/next", this::next);
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
                LocalDate.now(clock),
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
    Optional<NextView> view =
        latest(shelf).flatMap(patch -> stratum(shelf, patch)).flatMap(this::next);
    Pages.send(ctx, Pages.filled("home-next", Map.of("view", view)));
  }

  private static Optional<Stratum> stratum(LogSnapshot shelf, Patch latest) {
    return shelf.strata().entrySet().stream()
        .filter(e -> e.getValue().stream().anyMatch(p -> p.id().equals(latest.id())))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  private Optional<NextView> next(Stratum stratum) {
    Answers answers = windows.answers();
    if (answers.precautions(stratum).barred()) {
      return Optional.empty();
    }
    LiveModels.Known fitted = models.of(stratum, false, PATIENCE);
    if (fitted.models().isEmpty()) {
      return Optional.of(NextView.unknown(stratum));
    }
    LiveForecast ready = fitted.models().get();
    Known before = known.get();
    if (before != null && before.models() == ready && before.day().equals(LocalDate.now(clock))) {
      return Optional.of(NextView.of(before.answer(), fitted.renewing()));
    }
    try {
      TrialCase subject =
          answers.choose(
              TrialQuestion.about(stratum.family(), stratum.wood()).with(Light.of(stratum)));
      Optional<WindowAnswer> answer = models.window(answers, subject, ready, PATIENCE);
      answer.ifPresent(a -> known.set(new Known(ready, LocalDate.now(clock), a)));
      return Optional.of(
          answer
              .map(a -> NextView.of(a, fitted.renewing()))
              .orElseGet(() -> NextView.unknown(stratum)));
    } catch (Refusal e) {
      return Optional.empty(); // the window page asks for what is missing
    }
  }
}
