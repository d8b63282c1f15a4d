package charline.answer;

import charline.drift.Drift;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.log.Logbook;
import charline.model.CoatContradiction;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Trials;
import charline.model.borrow.Kin;
import charline.model.check.CheckedFit;
import charline.model.classical.AblationRegression;
import charline.model.classical.ClassicalFit;
import charline.model.classical.ClassicalOutcome;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Comparison;
import charline.model.way.Way;
import charline.progress.WorkWatch;
import charline.quote.Counts;
import charline.quote.Quoting;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.window.CheckedModels;
import charline.window.JobRisk;
import charline.window.LiveForecast;
import charline.window.Proviso;
import charline.window.Recommendation;
import charline.window.RigSetup;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import java.util.function.Supplier;

/** Answers questions from the trials of a log, which are read once. */
public final class Answers {
  private final Logbook log;
  private final Strata strata;
  private final TrialChoice choice;
  private final Recommender recommender;
  private final PatchChoice patches;
  private final WindowAnswers windows;

  /**
   * Answers from trials that were read already.
   *
   * @param log knows the boards and the cautions
   * @param rigs all rigs of the log
   * @param fitting fits those trials
   * @param at moment whose power checks count
   */
  public Answers(Logbook log, List<Rig> rigs, LogFitter fitting, OffsetDateTime at) {
    this.log = log;
    strata = fitting.strata();
    choice = new TrialChoice(log, List.copyOf(rigs), strata, at);
    recommender = new Recommender(fitting);
    patches = new PatchChoice(choice, recommender);
    windows = new WindowAnswers(log, strata, choice, recommender, patches);
  }

  /** Answers from what a log holds now. */
  public static Answers of(Logbook log, OffsetDateTime at) {
    return of(log, at, KeptFits.inMemory());
  }

  /**
   * The same where the log may have been fitted before.
   *
   * @param kept fits from then, to which new ones are added
   */
  public static Answers of(Logbook log, OffsetDateTime at, KeptFits kept) {
    return new Answers(log, log.rigs(), new LogFitter(Strata.of(log), kept), at);
  }

  /**
   * Strata that a question may mean: several where its trials were burned with several kinds of
   * light and it says neither which nor for which rig.
   *
   * @throws Refusal if nothing of that kind was tried, saying what was
   */
  public List<Stratum> candidates(TrialQuestion question) {
    return List.copyOf(choice.fitting(question).keySet());
  }

  /**
   * The trials that answer a question, and the bench.
   *
   * @throws Refusal if nothing of that kind was tried, if several kinds of light were, or if a knob
   *     is known from nowhere
   */
  public TrialCase choose(TrialQuestion question) {
    TrialCase subject = choice.choose(question);
    subject.piece().ifPresent(piece -> requirePatches(piece, subject));
    return subject;
  }

  private void requirePatches(Board piece, TrialCase subject) {
    if (subject.patchesOnPiece() > 0) {
      return;
    }
    Map<Stratum, List<Patch>> others = new LinkedHashMap<>();
    strata
        .byStratum()
        .forEach(
            (stratum, patches) -> {
              List<Patch> own =
                  patches.stream().filter(p -> p.board().id().equals(piece.id())).toList();
              if (!own.isEmpty()) {
                others.put(stratum, own);
              }
            });
    throw Refusal.nothingFound(
        Missing.PIECE_PATCHES,
        "An answer for a piece rests on patches of its own: board %s must have one of %s, and it has %s."
            .formatted(
                piece.name(), subject.trials().stratum().words(), TrialChoice.inventory(others)));
  }

  /**
   * What must be known of the coats that a question is about before the beam is on. Where it bars
   * the beam, no list, window, quote or sheet may be asked for.
   *
   * @throws Refusal as {@link #choose}, but for trials that are missing
   */
  public Precautions precautions(TrialQuestion question) {
    return Precautions.of(log, strata, question);
  }

  /** The same for a stratum that was burned. */
  public Precautions precautions(Stratum stratum) {
    return precautions(TrialQuestion.about(stratum.family(), stratum.wood()));
  }

  private TrialCase cleared(TrialQuestion question) {
    TrialCase subject = choose(question);
    Precautions.of(log, subject.trials().patches()).requireOpen();
    return subject;
  }

  /** The window of one stratum, or why there is none. */
  public WindowAnswer window(TrialQuestion question) {
    TrialCase subject = cleared(question);
    return windows.of(subject, recommender.window(subject), recommender.applicability(subject));
  }

  /** The answer where the recommendation was made already, as by models kept at hand. */
  public WindowAnswer window(TrialCase subject, Recommendation found, Applicability applicability) {
    return windows.of(subject, FoundWindow.of(found), applicability);
  }

  /**
   * The windows of every stratum, or of those with the light of the rig that is asked about.
   *
   * @param progress is told how far it is
   * @param view what is kept of an answer, as its models take megabytes; called by several threads
   */
  public <T> AllWindows<T> windows(
      TrialQuestion question, WorkWatch progress, Function<WindowAnswer, T> view) {
    return windows.all(question, progress, view);
  }

  /** A window with how much it owes to the priors. */
  public WeighedWindow weighedWindow(TrialQuestion question) {
    TrialCase subject = cleared(question);
    CheckedModels models = recommender.models(subject);
    CompletableFuture<PriorSensitivity.HalfAsSure> halfAsSure =
        CompletableFuture.supplyAsync(() -> recommender.halfAsSure(subject, models));
    WindowAnswer window =
        windows.of(
            subject, recommender.window(subject, models), recommender.applicability(subject));
    return new WeighedWindow(
        window, new PriorSensitivity(question.priors(), window.found(), halfAsSure.join()));
  }

  /** The patches to burn next, or to begin with where nothing was burned with this light. */
  public NextAnswer next(TrialQuestion question, PatchesWanted wanted) {
    precautions(question).requireOpen();
    return patches.next(question, wanted);
  }

  /** The hours of a job at the start setting of its window. */
  public QuoteAnswer quote(TrialQuestion question, Quoting quoting) {
    TrialCase subject = cleared(question);
    FoundWindow found = recommender.window(subject);
    return quote(
        windows.of(subject, found, recommender.applicability(subject)),
        quoting,
        () -> recommender.fitting().kept().passes(found));
  }

  /** The hours of a job whose window was found already. */
  public QuoteAnswer quote(WindowAnswer window, Quoting quoting) {
    return quote(window, quoting, () -> Quoting.passes(window.found()));
  }

  private static QuoteAnswer quote(WindowAnswer window, Quoting quoting, Supplier<Counts> passes) {
    if (!window.isWindow()) {
      return new QuoteAnswer(window, Optional.empty());
    }
    Quoting known =
        quoting.lead().isPresent() ? quoting : quoting.with(window.precautions().lead());
    return new QuoteAnswer(window, Optional.of(known.of(window.found(), passes.get())));
  }

  /** The burn-onset model. */
  public ModelAnswer onset(TrialQuestion question) {
    return model(choose(question), Event.CHAR);
  }

  /** The removal model, with rates. */
  public RemovalAnswer removal(TrialQuestion question) {
    ModelAnswer model = model(choose(question), Event.CLEARING);
    Trials trials = model.subject().trials();
    return new RemovalAnswer(
        model,
        RemovalRate.thickness(trials),
        RemovalRate.of(trials, model.fit(), model.subject().question().strokes()),
        AblationRegression.withDefaults().fit(trials.patches()),
        CoatContradiction.in(trials.patches(), model.fit()));
  }

  private ModelAnswer model(TrialCase subject, Event event) {
    KeptFits kept = recommender.fitting().kept();
    CheckedFit model =
        kept.fit(
            new KeptFits.Job(recommender.fitter(subject), subject.trials(), subject.piece()),
            event);
    return new ModelAnswer(
        subject, model.fit(), model.checks(), recommender.boards(subject), model.piece());
  }

  /**
   * Two ways of working on the same stock, held against each other.
   *
   * @param firstPasses passes of the first; empty for those of a window
   * @param secondPasses the same of the second
   * @throws Refusal as {@link #choose}, for either way
   */
  public CompareAnswer compare(
      TrialQuestion first,
      TrialQuestion second,
      OptionalInt firstPasses,
      OptionalInt secondPasses) {
    precautions(first).requireOpen();
    precautions(second).requireOpen();
    return new Comparing(choice, recommender)
        .compare(
            new Comparing.Asked(first, firstPasses), new Comparing.Asked(second, secondPasses));
  }

  /**
   * Pairs of patches that would tell two ways of working apart.
   *
   * @throws Refusal as {@link #choose}, for either way
   */
  public PairsAnswer pairs(TrialQuestion first, TrialQuestion second, PatchesWanted wanted) {
    return pairs(compare(first, second, OptionalInt.empty(), OptionalInt.empty()), wanted);
  }

  /** The same where the two were compared already. */
  public PairsAnswer pairs(CompareAnswer compared, PatchesWanted wanted) {
    return new PairsAnswer(compared, patches.pairs(compared, wanted));
  }

  /**
   * The char risk and the clearing chance of one setting.
   *
   * @param power share of the dial, or W on the work
   * @param speedMillimetresPerSecond hand or scan speed, as the bench of the question has it
   * @param passes 1 or more
   */
  public AskedRisk risk(
      TrialQuestion question, PowerSetting power, double speedMillimetresPerSecond, int passes) {
    TrialCase subject = cleared(question);
    LiveForecast models = models(subject, subject.trials());
    RigSetup bench = subject.bench();
    Settings settings =
        new Settings(
            power, bench.speed().at(speedMillimetresPerSecond), bench.spot(), bench.pulses());
    RiskAnswer risk =
        RiskAnswer.of(
            models,
            new Dialled(bench.rig(), settings, bench.at(), passes, bench.strokes()),
            subject.asked());
    return new AskedRisk(
        subject,
        risk,
        recommender.applicability(subject),
        Precautions.of(log, subject.trials().patches()),
        question
            .job()
            .map(
                limit ->
                    JobRisk.of(
                        limit,
                        subject
                            .trials()
                            .medianPatchSquareCentimetres()
                            .orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES),
                        risk.expected().charRiskMean(),
                        risk.expected().charRiskUpper())),
        recommender.boards(subject),
        provisos(subject, risk));
  }

  private LiveForecast models(TrialCase subject, Trials trials) {
    Fitter fitter = recommender.fitter(subject);
    return new LiveForecast(
        fitter, recommender.fitting().kept().models(fitter, trials, subject.piece()));
  }

  private List<Proviso> provisos(TrialCase subject, RiskAnswer risk) {
    Optional<Proviso.TintLeavesLess> tint =
        risk.asked().acceptTint()
            ? Proviso.TintLeavesLess.of(
                risk.expected().clearChanceLower(),
                RiskAnswer.of(
                        models(subject, subject.trials().acceptingTint(false)),
                        risk.dialled(),
                        risk.asked())
                    .expected()
                    .clearChanceLower())
            : Optional.empty();
    return Proviso.of(
        risk.keepsChar() ? risk.asked().charRisk() : 1, // else it promises nothing
        subject.trials().patches(),
        OptionalInt.of(risk.dialled().strokes().mostPasses(risk.dialled().passes())),
        tint,
        Optional.of(risk.models().clearing()));
  }

  /**
   * Priors for other trials from what all strata of the log say together.
   *
   * @param kin strata that count in full
   * @throws Refusal if the log says nothing
   */
  public LogPriors priors(Kin kin) {
    return recommender.fitting().priors(kin);
  }

  /** The classical view of one event, beside the posterior where there is a fit. */
  public ClassicalAnswer classical(
      TrialQuestion question, Event event, ClassicalRegression regression) {
    TrialCase subject = choose(question);
    ClassicalOutcome outcome = regression.fit(subject.trials(), event);
    return new ClassicalAnswer(
        subject,
        outcome,
        regression,
        outcome instanceof ClassicalFit fit
            ? Optional.of(
                Comparison.of(
                    fit, regression, recommender.fitter(subject).fit(subject.trials(), event)))
            : Optional.empty());
  }

  /** Whether a rig still does what it did, from its control patches and power checks. */
  public Drift drift(String rigName) {
    Rig rig = choice.rig(rigName);
    return Drift.of(
        rig,
        strata.byStratum().entrySet().stream()
            .filter(e -> e.getValue().stream().anyMatch(p -> p.rig().id().equals(rig.id())))
            .map(e -> new Trials(e.getKey(), e.getValue(), false, Way.UNSAID))
            .toList(),
        Fitter.withDefaults());
  }
}
