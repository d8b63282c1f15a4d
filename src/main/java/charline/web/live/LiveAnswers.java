package charline.web.live;

import charline.answer.Answers;
import charline.answer.CompareAnswer;
import charline.answer.Light;
import charline.answer.ModelAnswer;
import charline.answer.NextAnswer;
import charline.answer.PairsAnswer;
import charline.answer.PatchesWanted;
import charline.answer.RemovalAnswer;
import charline.answer.TrialCase;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.drift.Drift;
import charline.drift.Validity;
import charline.plan.Site;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.window.LiveForecast;
import charline.window.Recommendation;
import charline.wording.DriftText;
import charline.wording.VerdictText;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingDeque;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * Answers about trials that no page waits for: windows, verdicts, patches to burn next, models and
 * drift. One at a time is computed, the one asked for last first; the risk of a dialled patch is
 * never behind them.
 */
public final class LiveAnswers implements AutoCloseable {
  /** A window with its patches and both models takes up to 15 MB. */
  private static final int KEPT = 12;

  /** Enough for one morning at the bench. */
  private static final PatchesWanted PAIRS = new PatchesWanted(3, Site.OFFCUT, List.of());

  /** A verdict is a few words. */
  private static final int KEPT_VERDICTS = 500;

  /** A fit is looked for again after this, so that nothing waits once the page is closed. */
  private static final Duration LOOK = Duration.ofSeconds(1);

  private final LiveModels models;
  private final Clock clock;
  private final ThreadPoolExecutor worker =
      new ThreadPoolExecutor(
          1, 1, 0, TimeUnit.SECONDS, new LastFirst(), task -> daemon(task, "answering"));
  private final LastKnown<TrialQuestion, WindowAnswer> windows;
  private final LastKnown<Stratum, Verdict> verdicts;
  private final Map<Stratum, Verdict> said = new ConcurrentHashMap<>();
  private final LastKnown<PlanQuestion, NextAnswer> plans;
  private final LastKnown<TrialQuestion, ModelAnswer> onsets;
  private final LastKnown<TrialQuestion, RemovalAnswer> removals;
  private final LastKnown<TwoWays, Compared> comparisons;
  private final LastKnown<String, Drift> drifts;

  public LiveAnswers(LiveModels models, Clock clock) {
    this.models = models;
    this.clock = clock;
    windows = new LastKnown<>(worker, KEPT, this::state, this::window);
    verdicts = new LastKnown<>(worker, KEPT_VERDICTS, this::state, this::changed);
    plans = new LastKnown<>(worker, KEPT, this::state, q -> now().next(q.question(), q.wanted()));
    onsets = new LastKnown<>(worker, KEPT, this::state, q -> now().onset(q));
    removals = new LastKnown<>(worker, KEPT, this::state, q -> now().removal(q));
    comparisons = new LastKnown<>(worker, KEPT, this::state, this::compared);
    drifts = new LastKnown<>(worker, KEPT, this::state, rig -> now().drift(rig));
  }

  /** The patches to burn next are asked for. */
  public record PlanQuestion(TrialQuestion question, PatchesWanted wanted) {}

  /**
   * Two ways of working are to be compared.
   *
   * @param firstPasses passes of the first; empty for those of a window
   * @param secondPasses the same of the second
   */
  public record TwoWays(
      TrialQuestion first,
      TrialQuestion second,
      OptionalInt firstPasses,
      OptionalInt secondPasses) {}

  /**
   * Two ways of working, compared.
   *
   * @param pairs patches that would settle it, where it is not settled and takes other patches
   */
  public record Compared(CompareAnswer answer, Optional<PairsAnswer> pairs) {}

  /**
   * What a window comes to.
   *
   * @param words in a word or two
   * @param notValid why the window must not be used any more, if so
   * @param before what it came to before it changed, if it has since the page is served
   */
  public record Verdict(String words, Optional<Caution> notValid, Optional<String> before) {
    /** The same after another verdict on the same patches and those before them. */
    Verdict after(Verdict earlier) {
      return new Verdict(
          words,
          notValid,
          words.equals(earlier.words) ? earlier.before : Optional.of(earlier.words));
    }
  }

  private static final class LastFirst extends LinkedBlockingDeque<Runnable> {
    private static final long serialVersionUID = 1L;

    @Override
    public boolean offer(Runnable task) {
      return offerFirst(task);
    }
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }

  /** Windows, by question. */
  public LastKnown<TrialQuestion, WindowAnswer> windows() {
    return windows;
  }

  /** Verdicts of windows as they are usually asked for. */
  public LastKnown<Stratum, Verdict> verdicts() {
    return verdicts;
  }

  /** Patches to burn next. */
  public LastKnown<PlanQuestion, NextAnswer> plans() {
    return plans;
  }

  /** Burn-onset models. */
  public LastKnown<TrialQuestion, ModelAnswer> onsets() {
    return onsets;
  }

  /** Removal models. */
  public LastKnown<TrialQuestion, RemovalAnswer> removals() {
    return removals;
  }

  /** Two ways of working held against each other. */
  public LastKnown<TwoWays, Compared> comparisons() {
    return comparisons;
  }

  /** Drift, by the name of the rig. */
  public LastKnown<String, Drift> drifts() {
    return drifts;
  }

  /** What can be asked of the log as it is now; to the hour, so that an answer keeps. */
  public Answers now() {
    return models.answers(hour());
  }

  private OffsetDateTime hour() {
    return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.HOURS).plusHours(1);
  }

  private String state() {
    return models.shelf().state() + " " + hour();
  }

  private WindowAnswer window(TrialQuestion question) {
    Answers answers = now();
    TrialCase subject = answers.choose(question);
    LiveForecast ready = fitted(subject.trials().stratum(), question);
    Validity validity = valid(ready, subject);
    return models.window(answers, subject, ready, validity);
  }

  private Compared compared(TwoWays asked) {
    Answers answers = now();
    CompareAnswer answer =
        answers.compare(asked.first(), asked.second(), asked.firstPasses(), asked.secondPasses());
    boolean open = !answer.contest().settled() && asked.firstPasses().isEmpty();
    return new Compared(
        answer, open ? Optional.of(answers.pairs(answer, PAIRS)) : Optional.empty());
  }

  private Verdict changed(Stratum stratum) {
    return said.merge(stratum, verdict(stratum), (earlier, now) -> now.after(earlier));
  }

  private Verdict verdict(Stratum stratum) {
    TrialCase subject =
        now().choose(TrialQuestion.about(stratum.family(), stratum.wood()).with(Light.of(stratum)));
    LiveForecast ready = fitted(stratum, subject.question());
    Recommendation found = models.recommend(ready, subject);
    if (found.chosen().isEmpty()) {
      return new Verdict(found.verdict().word(), Optional.empty(), Optional.empty());
    }
    // A window is not shown without knowing whether it still is valid.
    Validity validity = valid(ready, subject);
    return new Verdict(
        VerdictText.of(found, validity), DriftText.notValid(validity), Optional.empty());
  }

  private LiveForecast fitted(Stratum stratum, TrialQuestion question) {
    while (!worker.isShutdown()) {
      LiveModels.Known known = models.of(stratum, question, LOOK);
      if (!known.renewing() && known.models().isPresent()) {
        return known.models().get();
      }
    }
    throw new CancellationException("The page is closed.");
  }

  private Validity valid(LiveForecast ready, TrialCase subject) {
    while (!worker.isShutdown()) {
      var validity = models.validity(ready, subject.bench().rig(), LOOK);
      if (validity.isPresent()) {
        return validity.get();
      }
    }
    throw new CancellationException("The page is closed.");
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
