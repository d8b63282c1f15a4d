package charline.web.live;

import charline.answer.Answers;
import charline.answer.Applicability;
import charline.answer.KeptFits;
import charline.answer.LogFitter;
import charline.answer.Priors;
import charline.answer.TrialCase;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.drift.Validity;
import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Trials;
import charline.model.way.Way;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.window.LiveForecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import java.time.Duration;
import java.time.OffsetDateTime;
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
import java.util.function.BiFunction;
import java.util.function.Supplier;

/**
 * Models of every stratum that was asked for, fitted once per change of its patches. While a fit
 * runs, the one before it answers and says so: a person at the bench never waits for a fit.
 */
public final class LiveModels implements AutoCloseable {
  private static final int KEPT_ANSWERS = 24;

  /** Each keeps the shifts of its board under every draw. */
  private static final int KEPT_PIECES = 8;

  /** A fit of 3,000 patches with its draws takes about 6 MB. */
  private static final int KEPT_FITS = 24;

  private static final Way ON_THE_FACE = Way.UNSAID.with(Place.FACE);

  private final Logbook log;
  private final BiFunction<Fitter, Trials, LiveForecast> fit;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "fitting");
            thread.setDaemon(true);
            return thread;
          });
  private final KeptFits kept;
  private final Map<Subject, Fitting> fittings = new LinkedHashMap<>();
  private final Map<Question, Recommendation> answers = new LastAsked<>();
  private final Map<Standing, CompletableFuture<Validity>> validities = new LastAsked<>();
  private LogSnapshot shelf;

  /**
   * @param kept fits from before
   */
  public LiveModels(Logbook log, KeptFits kept) {
    this(
        log,
        kept,
        (fitter, trials) ->
            new LiveForecast(fitter, kept.models(fitter, trials, Optional.empty())));
  }

  /** With a fit that can be made to wait. */
  LiveModels(Logbook log, BiFunction<Fitter, Trials, LiveForecast> fit) {
    this(log, KeptFits.inMemory(), fit);
  }

  private LiveModels(Logbook log, KeptFits kept, BiFunction<Fitter, Trials, LiveForecast> fit) {
    this.log = log;
    this.kept = kept;
    this.fit = fit;
  }

  /**
   * What a fit hangs on beside the patches.
   *
   * @param way coat and place; a fit answers for any rig and figure of its patches
   */
  private record Subject(
      Stratum stratum,
      boolean acceptTint,
      Way way,
      Priors priors,
      boolean borrow,
      Optional<Board> piece) {
    List<Patch> patches(LogSnapshot seen) {
      return seen.trials().with(way.placeOrFace()).of(stratum);
    }
  }

  /** Models are the same object for as long as their patches stay the same. */
  private record Question(LiveForecast models, Way way, RigSetup bench, Requirements asked) {}

  /** A rig with another power check is another rig. */
  private record Standing(LiveForecast models, Rig rig) {}

  /** Answers to what was asked last. */
  private static final class LastAsked<K, V> extends LinkedHashMap<K, V> {
    private static final long serialVersionUID = 1L;

    LastAsked() {
      super(16, 0.75f, true);
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
      return size() > KEPT_ANSWERS;
    }
  }

  /**
   * A fit, done or under way.
   *
   * @param edition the newest edition of the shelf that was seen to hold these patches
   * @param before the newest models from before these patches
   */
  private record Fitting(
      long edition,
      List<Patch> patches,
      Optional<LiveForecast> before,
      CompletableFuture<LiveForecast> now) {}

  /**
   * What is known of a stratum now.
   *
   * @param models the newest that are ready; empty where there is no patch yet, or no fit yet
   * @param renewing true while newer ones are being fitted
   */
  public record Known(Optional<LiveForecast> models, boolean renewing) {
    /** The same seen for a way of working; empty where older models know nothing of it. */
    public Known asking(Way way) {
      return new Known(
          models.filter(older -> older.trials().tried(way)).map(older -> older.asking(way)),
          renewing);
    }
  }

  /**
   * How models of a stratum stand to what the log holds now.
   *
   * @param trials of older ones that answer while newer ones are being fitted
   */
  public Staleness behind(Trials trials) {
    return Staleness.of(
        trials.patches(), shelf().trials().with(trials.asked().placeOrFace()).of(trials.stratum()));
  }

  /** What the log holds now. */
  public synchronized LogSnapshot shelf() {
    String state = log.state();
    if (shelf == null || !shelf.state().equals(state)) {
      shelf = LogSnapshot.read(log, shelf == null ? 1 : shelf.edition() + 1, state);
    }
    return shelf;
  }

  /**
   * Models of a stratum.
   *
   * @param patience how long to wait for a fit before an older one will do
   */
  public Known of(Stratum stratum, boolean acceptTint, Duration patience) {
    return of(shelf(), stratum, acceptTint, patience);
  }

  /** The same as a question asks for them: for its coat, and borrowing where it says so. */
  public Known of(Stratum stratum, TrialQuestion question, Duration patience) {
    return of(
        shelf(),
        new Subject(
            stratum,
            question.asked().acceptTint(),
            Way.UNSAID.with(question.way().coat()).with(question.way().placeOrFace()),
            question.priors(),
            question.borrow(),
            question.piece().map(log::board)),
        patience);
  }

  /** The same for a request that saw the log as it was then; never older than others saw it. */
  Known of(LogSnapshot seen, Stratum stratum, boolean acceptTint, Duration patience) {
    return of(
        seen,
        new Subject(stratum, acceptTint, ON_THE_FACE, Priors.USUAL, false, Optional.empty()),
        patience);
  }

  private Known of(LogSnapshot seen, Subject subject, Duration patience) {
    Stratum stratum = subject.stratum();
    if (subject.patches(seen).isEmpty()) {
      return new Known(Optional.empty(), false);
    }
    long deadline = System.nanoTime() + patience.toNanos();
    while (true) {
      Fitting fitting = fitting(subject, seen);
      try {
        long left = Math.max(0, deadline - System.nanoTime());
        return new Known(Optional.of(fitting.now().get(left, TimeUnit.NANOSECONDS)), false);
      } catch (CancellationException e) {
        // Another device recorded a patch meanwhile: the fit with it has the time that is left.
      } catch (TimeoutException e) {
        return new Known(fitting.before(), true);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return new Known(fitting.before(), true);
      } catch (ExecutionException e) {
        throw new IllegalStateException("The models of " + stratum.words() + " failed.", e);
      }
    }
  }

  /** The fit for these patches, or for those of a newer edition where there is one already. */
  private synchronized Fitting fitting(Subject subject, LogSnapshot seen) {
    long edition = seen.edition();
    List<Patch> own = subject.patches(seen);
    // What is known of boards, and what is borrowed, hangs on the patches of others too.
    List<Patch> patches = seen.trials().patches();
    Fitting known = fittings.get(subject);
    if (known != null && known.edition() >= edition) {
      return known;
    }
    if (known != null && known.patches().equals(patches)) {
      Fitting same = new Fitting(edition, known.patches(), known.before(), known.now());
      fittings.put(subject, same);
      return same;
    }
    Trials trials = new Trials(subject.stratum(), own, subject.acceptTint(), subject.way());
    Supplier<LiveForecast> work =
        () -> {
          Fitter fitter = fitting(seen).fitter(trials, subject.priors(), subject.borrow());
          return subject
              .piece()
              .filter(board -> own.stream().anyMatch(p -> p.board().id().equals(board.id())))
              .map(
                  board ->
                      new LiveForecast(fitter, kept.models(fitter, trials, Optional.of(board))))
              .orElseGet(() -> fit.apply(fitter, trials));
        };
    Fitting fresh =
        new Fitting(
            edition,
            patches,
            known == null ? Optional.empty() : newest(known),
            CompletableFuture.supplyAsync(work, worker));
    keep(subject, fresh);
    if (known != null) {
      known.now().cancel(false); // only now, so that whoever waits for it finds the fresh one
    }
    return fresh;
  }

  /** Keeps a fit, and of all only those that were fitted last. */
  private void keep(Subject subject, Fitting fresh) {
    fittings.remove(subject);
    fittings.put(subject, fresh);
    keepLast(KEPT_PIECES, fittings.keySet().stream().filter(s -> s.piece().isPresent()).toList());
    keepLast(KEPT_FITS, List.copyOf(fittings.keySet()));
  }

  private void keepLast(int most, List<Subject> subjects) {
    subjects.stream().limit(Math.max(0, subjects.size() - most)).forEach(fittings::remove);
  }

  private LogFitter fitting(LogSnapshot seen) {
    return new LogFitter(seen.trials(), kept);
  }

  private static Optional<LiveForecast> newest(Fitting fitting) {
    if (!fitting.now().isDone()) {
      return fitting.before();
    }
    try {
      return Optional.of(fitting.now().join());
    } catch (CompletionException e) {
      return fitting.before();
    }
  }

  /**
   * What can be asked of the log as it is now.
   *
   * @param at moment whose power checks count
   */
  public Answers answers(OffsetDateTime at) {
    LogSnapshot now = shelf();
    return new Answers(log, now.rigs(), fitting(now), at);
  }

  /**
   * The answer of models to a question.
   *
   * @param subject what was asked; the models' trials take the place of its own
   * @param validity whether the window of the models may be used
   */
  WindowAnswer window(Answers answers, TrialCase subject, LiveForecast models, Validity validity) {
    LiveForecast asked = models.asking(subject.trials().asked());
    TrialCase known = subject.with(asked.trials());
    Recommendation found = recommend(models, known);
    return answers.window(known, found, Applicability.of(known, validity));
  }

  /** The window of models for what was asked, computed once per question. */
  public Recommendation recommend(LiveForecast models, TrialCase subject) {
    Question question =
        new Question(models, subject.trials().asked(), subject.bench(), subject.asked());
    synchronized (answers) {
      Recommendation known = answers.get(question);
      if (known != null) {
        return known;
      }
    }
    Recommendation found =
        models.asking(question.way()).recommend(question.bench(), question.asked());
    synchronized (answers) {
      answers.put(question, found);
    }
    return found;
  }

  /**
   * Whether the window of models may be used on a rig, decided once per change of their patches and
   * of the rig. Control patches cost a fit, so it is decided where the models are fitted.
   *
   * @param rig with all its power checks up to now
   * @param patience how long to wait
   * @return empty where that was not long enough
   */
  public Optional<Validity> validity(LiveForecast models, Rig rig, Duration patience) {
    CompletableFuture<Validity> validity;
    synchronized (validities) {
      validity =
          validities.computeIfAbsent(
              new Standing(models, rig),
              standing ->
                  CompletableFuture.supplyAsync(() -> kept.validity(rig, models.trials()), worker));
    }
    try {
      return Optional.of(validity.get(patience.toNanos(), TimeUnit.NANOSECONDS));
    } catch (TimeoutException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } catch (ExecutionException e) {
      throw new IllegalStateException("The drift of rig " + rig.name() + " failed.", e);
    }
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
