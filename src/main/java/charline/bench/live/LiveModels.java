package charline.bench.live;

import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Asked;
import charline.window.Bench;
import charline.window.LiveForecast;
import charline.window.Recommendation;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Models of every stratum that was asked for, fitted once per change of its patches. While a fit
 * runs, the one before it answers and says so: a person at the bench never waits for a fit.
 */
public final class LiveModels implements AutoCloseable {
  private static final int KEPT_ANSWERS = 32;

  private final Logbook log;
  private final Fitter fitter;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "fitting");
            thread.setDaemon(true);
            return thread;
          });
  private final Map<Subject, Fitting> fittings = new LinkedHashMap<>();
  private final Map<Question, Recommendation> answers =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Question, Recommendation> eldest) {
          return size() > KEPT_ANSWERS;
        }
      };
  private Shelf shelf;

  public LiveModels(Logbook log, Fitter fitter) {
    this.log = log;
    this.fitter = fitter;
  }

  private record Subject(Stratum stratum, boolean acceptTint) {}

  /** Models are the same object for as long as their patches stay the same. */
  private record Question(LiveForecast models, Bench bench, Asked asked) {}

  private record Fitting(
      List<Patch> patches, Optional<LiveForecast> before, CompletableFuture<LiveForecast> now) {}

  /**
   * What is known of a stratum now.
   *
   * @param models the newest that are ready; empty where there is no patch yet, or no fit yet
   * @param renewing true while newer ones are being fitted
   */
  public record Known(Optional<LiveForecast> models, boolean renewing) {}

  /** What the log holds now. */
  public synchronized Shelf shelf() {
    String state = log.state();
    if (shelf == null || !shelf.state().equals(state)) {
      shelf = Shelf.read(log, state);
    }
    return shelf;
  }

  /**
   * Models of a stratum.
   *
   * @param patience how long to wait for a fit before an older one will do
   */
  public Known of(Stratum stratum, boolean acceptTint, Duration patience) {
    List<Patch> patches = shelf().strata().get(stratum);
    if (patches == null) {
      return new Known(Optional.empty(), false);
    }
    Fitting fitting = fitting(new Subject(stratum, acceptTint), patches);
    try {
      return new Known(
          Optional.of(fitting.now().get(patience.toMillis(), TimeUnit.MILLISECONDS)), false);
    } catch (TimeoutException e) {
      return new Known(fitting.before(), true);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Known(fitting.before(), true);
    } catch (ExecutionException | CancellationException e) {
      throw new IllegalStateException("The models of " + stratum.words() + " failed.", e);
    }
  }

  private synchronized Fitting fitting(Subject subject, List<Patch> patches) {
    Fitting known = fittings.get(subject);
    if (known != null && (known.patches() == patches || known.patches().equals(patches))) {
      return known;
    }
    Trials trials = new Trials(subject.stratum(), patches, subject.acceptTint());
    Fitting fresh =
        new Fitting(
            patches,
            known == null ? Optional.empty() : newest(known),
            CompletableFuture.supplyAsync(() -> LiveForecast.fitted(fitter, trials), worker));
    fittings.put(subject, fresh);
    return fresh;
  }

  private static Optional<LiveForecast> newest(Fitting fitting) {
    if (!fitting.now().isDone()) {
      fitting.now().cancel(false); // nobody needs it any more
      return fitting.before();
    }
    try {
      return Optional.of(fitting.now().join());
    } catch (CompletionException | CancellationException e) {
      return fitting.before();
    }
  }

  /** The window of models, computed once per question. */
  public Recommendation recommend(LiveForecast models, Bench bench, Asked asked) {
    Question question = new Question(models, bench, asked);
    synchronized (answers) {
      Recommendation known = answers.get(question);
      if (known != null) {
        return known;
      }
    }
    Recommendation found = models.recommend(bench, asked);
    synchronized (answers) {
      answers.put(question, found);
    }
    return found;
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
