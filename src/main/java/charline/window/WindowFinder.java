package charline.window;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PieceFit;
import charline.model.PieceFits;
import charline.model.PriorSet;
import charline.model.Trials;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds the window of a stratum, or says why there is none.
 *
 * @param fitter fits the two models
 */
public record WindowFinder(Fitter fitter) {
  /** Below this chance that any window exists the answer is "none". */
  static final double HOPELESS = 0.2;

  /**
   * How far a limit may still move as patches come, in ln dose: simulated windows that a move by so
   * much would close were gone a few patches later more than twice as often as the others (package
   * description).
   */
  static final double LIMITS_MOVE = 0.15;

  public static WindowFinder withDefaults() {
    return new WindowFinder(Fitter.withDefaults());
  }

  /** With other priors. */
  public WindowFinder with(PriorSet priors) {
    return new WindowFinder(fitter.with(priors));
  }

  /** For the gist, with priors of the same centres that say half as much: every spread doubled. */
  public WindowFinder halfAsSure() {
    return new WindowFinder(fitter.with(fitter.priors().widened(2)).forGist());
  }

  /**
   * The answer for one stratum.
   *
   * @param trials its patches, tint counted as {@code asked} says
   * @param bench rig and fixed knobs
   * @param asked what the window has to keep
   */
  public Recommendation recommend(Trials trials, RigSetup bench, Requirements asked) {
    return recommend(
        CheckedModels.of(fitter, trials.acceptingTint(asked.acceptTint())), bench, asked);
  }

  /**
   * The answer from models fitted before.
   *
   * @param counted the patches they were fitted to, tint counted as {@code asked} says
   */
  public Recommendation recommend(
      Trials counted, RigSetup bench, Requirements asked, ModelFit charFit, ModelFit clearing) {
    return recommend(CheckedModels.of(fitter, counted, charFit, clearing), bench, asked);
  }

  /**
   * The answer for one piece, whose own patches say how it differs from other boards.
   *
   * @param counted the patches that the models were fitted to, those of the piece among them
   * @param fits the models of the piece
   */
  public Recommendation recommend(
      Trials counted, RigSetup bench, Requirements asked, PieceFits fits) {
    return recommend(CheckedModels.of(fitter, counted, fits), bench, asked);
  }

  /**
   * The answer from models that were checked before.
   *
   * @param models of patches whose tint is counted as {@code asked} says
   */
  public Recommendation recommend(CheckedModels models, RigSetup bench, Requirements asked) {
    Trials counted = models.trials();
    ModelFit charFit = models.charring();
    ModelFit clearing = models.clearing();
    Optional<PieceFits> piece = models.piece();
    if (counted.acceptTint() != asked.acceptTint()) {
      throw new IllegalArgumentException(
          "The models must count a tint as the question does; fit them anew.");
    }
    RiskBounds promises = new RiskBounds(asked, charFit, clearing, bench.strokes());
    TriedRegion reach = new TriedRegion(counted.patches());
    TriedKnobs knobs = TriedKnobs.of(counted.patches());
    SupportingPatches witnesses = new SupportingPatches(counted);

    List<PassSearch> searches =
        PassNumbers.between(reach.passesTried()).stream()
            .map(passes -> new PassSearch(bench, reach, knobs, witnesses, promises, passes))
            .toList();
    List<Candidate> candidates =
        bench.linesApart()
            ? List.of()
            : searches.stream().flatMap(s -> Candidate.of(s).stream()).toList();
    List<Box> boxes = candidates.stream().map(Candidate::box).toList();
    Optional<Box> fastest =
        candidates.stream()
            .max(
                Comparator.comparingInt((Candidate c) -> confirming(c.box(), counted, piece))
                    .thenComparing(c -> !c.box().narrowFor(bench.speed()))
                    .thenComparing(Candidate::surer)
                    .thenComparing(c -> c.box().start().netAreaRateSquareCentimetresPerMinute()))
            .map(Candidate::box);
    boolean settled = searches.stream().anyMatch(s -> s.survives(LIMITS_MOVE));
    double chance = promises.chanceAnyWindow(reach);
    Optional<PassSearch> hope =
        searches.stream()
            .filter(s -> s.room() > Double.NEGATIVE_INFINITY)
            .max(Comparator.comparingDouble(PassSearch::room));
    Optional<PieceEvidence> onPiece =
        piece.map(
            fits ->
                new PieceEvidence(
                    fits,
                    fastest.map(box -> controls(box, counted, fits)).orElse(PieceControls.NONE),
                    models.unlike()));
    Findings findings =
        new Findings(
            counted.evidence(),
            asked,
            bench,
            knobs,
            witnesses,
            models.charChecks(),
            models.clearingChecks(),
            Math.max(charFit.omega().median(), clearing.omega().median()),
            fastest,
            settled,
            onPiece,
            fastest.isPresent() ? Shortfall.NONE : shortfall(searches, hope.isPresent()),
            chance);
    Verdict verdict = findings.verdict();
    Optional<Box> chosen = verdict == Verdict.WINDOW ? fastest : Optional.empty();
    int mapped =
        chosen.map(Box::passes).or(() -> hope.map(PassSearch::passes)).orElse(reach.mostPasses());
    return new Recommendation(
        counted.stratum(),
        asked,
        counted.evidence(),
        bench,
        verdict,
        findings.reasons(),
        findings.nextSteps(),
        findings.standing(),
        knobs,
        chance,
        chosen,
        chosen.map(c -> boxes.stream().filter(b -> b != c).toList()).orElse(List.of()),
        MapMaker.map(bench, reach, knobs, witnesses, promises, mapped),
        counted.medianPatchSquareCentimetres(),
        Optional.of(charFit),
        Optional.of(clearing),
        onPiece,
        counted.patches(),
        chosen
            .map(box -> surerWithoutTint(models, box.start(), asked))
            .orElse(OptionalDouble.empty()));
  }

  /** Fits the removal model a second time, which is asked for where tint is accepted alone. */
  private OptionalDouble surerWithoutTint(
      CheckedModels models, Forecast start, Requirements asked) {
    if (!asked.acceptTint()) {
      return OptionalDouble.empty();
    }
    Trials strict = models.trials().acceptingTint(false);
    ModelFit fit =
        models
            .piece()
            .map(own -> PieceFit.of(fitter, strict, Event.CLEARING, own.board().id()).piece())
            .orElseGet(() -> fitter.fit(strict, Event.CLEARING));
    double lower =
        PredictedChance.of(fit, start.doseJoulesPerCm2(), start.intensity(), start.passes())
            .lower(asked.confidence());
    return Proviso.TintLeavesLess.of(start.clearChanceLower(), lower).isPresent()
        ? OptionalDouble.of(lower)
        : OptionalDouble.empty();
  }

  /**
   * The box of one number of passes.
   *
   * @param surer whether it clears with half of the doubt that was asked for
   */
  private record Candidate(Box box, boolean surer) {
    static Optional<Candidate> of(PassSearch search) {
      return search
          .surerBox()
          .map(box -> new Candidate(box, true))
          .or(() -> search.box().map(box -> new Candidate(box, false)));
    }
  }

  /** On a piece the window that is nearest to being confirmed goes before a faster one. */
  private static int confirming(Box box, Trials counted, Optional<PieceFits> piece) {
    return piece.map(fits -> -controls(box, counted, fits).wanting()).orElse(0);
  }

  private static PieceControls controls(Box box, Trials counted, PieceFits fits) {
    return PieceControls.of(box, counted.patches(), fits.board().id(), counted.acceptTint());
  }

  /** Why no box was found, as far as the search shows. */
  private static Shortfall shortfall(List<PassSearch> searches, boolean anythingWithinReach) {
    Optional<PassSearch> best =
        searches.stream()
            .filter(s -> s.roomUnderChar() > Double.NEGATIVE_INFINITY)
            .max(Comparator.comparingDouble(PassSearch::roomUnderChar));
    return new Shortfall(
        anythingWithinReach,
        best.map(PassSearch::bestUnderChar),
        searches.stream().anyMatch(PassSearch::clearsSomewhere),
        searches.stream().anyMatch(PassSearch::openAtOtherSpeeds),
        searches.stream().anyMatch(PassSearch::openWithFewerUnharmed));
  }
}
