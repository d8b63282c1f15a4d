package charline.window;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PieceFits;
import charline.model.PriorSet;
import charline.model.Trials;
import charline.model.check.FitChecker;
import charline.model.check.FitChecks;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

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

  /** With priors of the same centres that say half as much: every spread doubled. */
  public WindowFinder halfAsSure() {
    return with(fitter.priors().widened(2));
  }

  /**
   * The answer for one stratum.
   *
   * @param trials its patches, tint counted as {@code asked} says
   * @param bench rig and fixed knobs
   * @param asked what the window has to keep
   */
  public Recommendation recommend(Trials trials, RigSetup bench, Requirements asked) {
    Trials counted = trials.acceptingTint(asked.acceptTint());
    return recommend(
        counted,
        bench,
        asked,
        fitter.fit(counted, Event.CHAR),
        fitter.fit(counted, Event.CLEARING));
  }

  /**
   * The answer from models fitted before.
   *
   * @param counted the patches they were fitted to, tint counted as {@code asked} says
   */
  public Recommendation recommend(
      Trials counted, RigSetup bench, Requirements asked, ModelFit charFit, ModelFit clearing) {
    return recommend(counted, bench, asked, charFit, clearing, Optional.empty(), checking(counted));
  }

  /**
   * The same if the models pass their checks, which take a third of the time: for simulations that
   * look after every patch. A window or none found so holds only once {@link #recommend} agrees.
   */
  public Recommendation ifChecksPass(Trials trials, RigSetup bench, Requirements asked) {
    Trials counted = trials.acceptingTint(asked.acceptTint());
    return recommend(
        counted,
        bench,
        asked,
        fitter.fit(counted, Event.CHAR),
        fitter.fit(counted, Event.CLEARING),
        Optional.empty(),
        fit -> FitChecks.none(fit.event()));
  }

  /**
   * The answer for one piece, whose own patches say how it differs from other boards.
   *
   * @param counted the patches that the models were fitted to, those of the piece among them
   * @param fits the models of the piece
   */
  public Recommendation recommend(
      Trials counted, RigSetup bench, Requirements asked, PieceFits fits) {
    return recommend(
        counted,
        bench,
        asked,
        fits.charring().piece(),
        fits.clearing().piece(),
        Optional.of(fits),
        checking(counted));
  }

  private Function<ModelFit, FitChecks> checking(Trials counted) {
    FitChecker checker = new FitChecker(fitter);
    return fit -> checker.check(counted, fit);
  }

  private Recommendation recommend(
      Trials counted,
      RigSetup bench,
      Requirements asked,
      ModelFit charFit,
      ModelFit clearing,
      Optional<PieceFits> piece,
      Function<ModelFit, FitChecks> checking) {
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
    List<Box> boxes =
        bench.linesApart() ? List.of() : searches.stream().flatMap(s -> s.box().stream()).toList();
    Optional<Box> fastest =
        boxes.stream()
            .max(
                Comparator.comparingInt((Box b) -> confirming(b, counted, piece))
                    .thenComparing(b -> !b.narrowFor(bench.speed()))
                    .thenComparing(b -> b.start().netAreaRateSquareCentimetresPerMinute()));
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
                    fastest.map(box -> controls(box, counted, fits)).orElse(PieceControls.NONE)));
    Findings findings =
        new Findings(
            counted.evidence(),
            asked,
            bench,
            knobs,
            witnesses,
            checking.apply(charFit),
            checking.apply(clearing),
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
        counted.patches());
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
        searches.stream().anyMatch(PassSearch::openAtOtherSpeeds));
  }
}
