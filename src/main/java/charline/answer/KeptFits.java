package charline.answer;

import charline.cache.Basis;
import charline.cache.Cache;
import charline.cache.Form;
import charline.drift.Validity;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.LearnedSpread;
import charline.model.PieceFits;
import charline.model.Posterior;
import charline.model.Trials;
import charline.model.borrow.BoardSpreads;
import charline.model.check.CheckedFit;
import charline.plan.NextPatches;
import charline.quote.Counts;
import charline.quote.Quoting;
import charline.trial.Board;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.window.CheckedModels;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/**
 * Fits that were made before, and what follows from them alone. It is the same whether it was kept
 * or is computed now.
 */
public final class KeptFits implements AutoCloseable {
  /** Keeps nothing but what is learned of boards, for as long as the program runs. */
  public static KeptFits inMemory() {
    return new KeptFits(Cache.NONE);
  }

  private static final List<Form<?, ?>> FORMS =
      List.of(
          new Form<>(
              Posterior.class, Posterior.Parts.class, Posterior::parts, Posterior.Parts::whole));

  /** What strata say of boards takes no room to speak of, but their patches do. */
  private static final int MOST_SKETCHES = 400;

  private final Cache cache;
  private final Map<Sketch, Optional<LearnedSpread.Evidence>> sketches = new ConcurrentHashMap<>();

  private record Sketch(Fitter fitter, Trials trials, Event event) {}

  /** What a stratum says of boards, or that it says nothing. */
  private record Said(Optional<LearnedSpread.Evidence> evidence) {}

  private KeptFits(Cache cache) {
    this.cache = cache;
  }

  /**
   * Fits in files.
   *
   * @param folder made when the first is kept; safe to delete
   */
  public static KeptFits in(Path folder) {
    return new KeptFits(Cache.in(folder, FORMS));
  }

  /** What one event of a stratum says of boards. */
  Optional<LearnedSpread.Evidence> sketch(Fitter fitter, Trials trials, Event event) {
    if (sketches.size() > MOST_SKETCHES) {
      sketches.clear();
    }
    return sketches.computeIfAbsent(
        new Sketch(fitter, trials, event),
        s ->
            cache
                .get(
                    "boards",
                    Basis.of(fitter, trials, event),
                    Said.class,
                    () -> new Said(BoardSpreads.sketch(fitter, trials, event)))
                .evidence());
  }

  /**
   * Trials with the fitter that is to fit them, and the piece that an answer is for.
   *
   * @param basis both, looked through once
   */
  record Job(Fitter fitter, Trials trials, Optional<Board> piece, Basis basis) {
    Job(Fitter fitter, Trials trials, Optional<Board> piece) {
      this(fitter, trials, piece, Basis.of(fitter, trials, piece));
    }
  }

  /** The model of one event, checked. */
  CheckedFit fit(Job job, Event event) {
    return cache.get(
        "fit",
        job.basis().with(event),
        CheckedFit.class,
        () -> CheckedFit.of(job.fitter(), job.trials(), event, job.piece()));
  }

  /** Both models, checked. */
  public CheckedModels models(Fitter fitter, Trials trials, Optional<Board> piece) {
    return models(new Job(fitter, trials, piece));
  }

  CheckedModels models(Job job) {
    return CheckedModels.of(job.trials(), job.piece(), event -> fit(job, event));
  }

  /** The window of both models. */
  FoundWindow window(Job job, RigSetup bench, Requirements asked) {
    return window(job, models(job), bench, asked);
  }

  /** The same where the models of the job are at hand. */
  FoundWindow window(Job job, CheckedModels models, RigSetup bench, Requirements asked) {
    Basis basis = known(about(job, bench, asked), models);
    Recommendation found =
        cache.get(
            "window",
            basis,
            Recommendation.class,
            () -> new WindowFinder(job.fitter()).recommend(models, bench, asked));
    return new FoundWindow(found, Optional.of(basis.knowing(found)));
  }

  /** Time alone changes no answer: of a moment counts the latest power check before it. */
  private static Basis about(Job job, RigSetup bench, Requirements asked) {
    OffsetDateTime at =
        bench.rig().checkAt(bench.at()).map(PowerCheck::at).orElse(OffsetDateTime.MIN);
    return job.basis().with(bench.at(at), asked).knowing(bench);
  }

  private static Basis known(Basis basis, CheckedModels models) {
    Basis fits = basis.knowing(models.charring(), models.clearing());
    return models
        .piece()
        .map(
            known ->
                fits.knowing(
                    known,
                    known.charring(),
                    known.clearing(),
                    known.charring().general(),
                    known.clearing().general()))
        .orElse(fits);
  }

  /**
   * What is left of a window when all priors say half as much.
   *
   * @param models of the job; what was found of them is not looked for again
   */
  PriorSensitivity.HalfAsSure halfAsSure(
      Job job, CheckedModels models, RigSetup bench, Requirements asked) {
    return cache.get(
        "half",
        about(job, bench, asked),
        PriorSensitivity.HalfAsSure.class,
        () -> {
          WindowFinder finder = new WindowFinder(job.fitter()).halfAsSure();
          return PriorSensitivity.HalfAsSure.of(
              finder.recommend(models.refitted(finder.fitter()), bench, asked));
        });
  }

  /** The window of the boards beside a piece, from the models of the piece. */
  Recommendation general(FoundWindow piece, Fitter fitter, Trials others) {
    return after(
        "general",
        piece,
        known -> known.with(fitter, others),
        Recommendation.class,
        () -> {
          PieceFits fits = piece.found().piece().orElseThrow().fits();
          return new WindowFinder(fitter)
              .recommend(
                  others,
                  piece.found().bench(),
                  piece.found().asked(),
                  fits.charring().general(),
                  fits.clearing().general());
        });
  }

  /** The passes that a job takes at the start setting of a window. */
  Counts passes(FoundWindow window) {
    return after(
        "passes",
        window,
        UnaryOperator.identity(),
        Counts.class,
        () -> Quoting.passes(window.found()));
  }

  /**
   * The patches that follow from a window.
   *
   * @param wanted what they hang on beside the window
   * @param plan chooses them
   */
  NextPatches next(FoundWindow window, List<Object> wanted, Supplier<NextPatches> plan) {
    return after("next", window, known -> known.with(wanted), NextPatches.class, plan);
  }

  private <T> T after(
      String what, FoundWindow window, UnaryOperator<Basis> more, Class<T> type, Supplier<T> work) {
    return window
        .basis()
        .map(basis -> cache.get(what, more.apply(basis), type, work))
        .orElseGet(work);
  }

  /** Whether the window of some trials may be used on a rig. */
  public Validity validity(Rig rig, Trials trials) {
    Fitter usual = Fitter.withDefaults();
    return cache.get(
        "validity",
        Basis.of(usual, trials, rig),
        Validity.class,
        () -> Validity.of(rig, trials, usual));
  }

  /** Writes what is to be kept; to be called when the answer is out. */
  @Override
  public void close() {
    cache.close();
  }
}
