package charline.window;

import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.model.Evidence;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PieceFits;
import charline.model.Trials;
import charline.model.way.Way;
import charline.trial.Board;
import charline.trial.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the models expect of any one setting before it is fired. The posteriors are fitted once;
 * each setting then costs a pass over their draws, however many patches stand behind them.
 */
public final class LiveForecast {
  private final Fitter fitter;
  private final CheckedModels models;
  private final TriedRegion reach;
  private final TriedKnobs knobs;
  private final SupportingPatches witnesses;

  /**
   * From models that were checked before.
   *
   * @param fitter made them
   */
  public LiveForecast(Fitter fitter, CheckedModels models) {
    this.fitter = fitter;
    this.models = models;
    reach = new TriedRegion(models.trials().patches());
    knobs = TriedKnobs.of(models.trials().patches());
    witnesses = new SupportingPatches(models.trials());
  }

  /** Fits both models and checks them against their own trials. */
  public static LiveForecast fitted(Fitter fitter, Trials trials) {
    return new LiveForecast(fitter, CheckedModels.of(fitter, trials));
  }

  /**
   * The same for one piece.
   *
   * @param piece on which one of the trials or more was burned
   */
  public static LiveForecast fitted(Fitter fitter, Trials trials, Board piece) {
    return new LiveForecast(fitter, CheckedModels.of(fitter, trials, piece));
  }

  /** The same models seen for another way of working, which must have been tried. */
  public LiveForecast asking(Way asked) {
    return asked.equals(trials().asked()) ? this : new LiveForecast(fitter, models.asking(asked));
  }

  /**
   * What one setting does on the board that it is for.
   *
   * @param charRiskMean char risk per patch-sized area, averaged over the posterior
   * @param charRiskUpper one-sided upper bound of that risk at the asked confidence
   * @param clearChanceMean clearing chance, averaged over the posterior
   * @param clearChanceLower one-sided lower bound of that chance at the asked confidence
   * @param beyond in what the setting lies outside the trials; empty inside them
   * @param untried knobs that stand where no trial had them
   * @param unharmedWanted how many patches a window takes that came through so much, where fewer
   *     did; else empty
   */
  public record Expected(
      double charRiskMean,
      double charRiskUpper,
      double clearChanceMean,
      double clearChanceLower,
      List<Beyond> beyond,
      List<UntriedKnob> untried,
      OptionalInt unharmedWanted) {
    public Expected {
      beyond = List.copyOf(beyond);
      untried = List.copyOf(untried);
    }

    /** True if the setting lies inside what was tried. */
    public boolean tried() {
      return beyond.isEmpty() && untried.isEmpty();
    }
  }

  /**
   * What to expect of a setting; the bounds are those a window has to keep.
   *
   * @param rig that it is dialled on
   * @param settings all that is dialled
   * @param exposure of one pass with it
   * @param passes 1 or more
   * @param strokes how an area is covered: seams count for char
   * @param confidence of the bounds, 0.5 to 1
   */
  public Expected at(
      Rig rig,
      Settings settings,
      Exposure exposure,
      int passes,
      Strokes strokes,
      double confidence) {
    return expected(
        models.charring(), models.clearing(), rig, settings, exposure, passes, strokes, confidence);
  }

  /** The same on a board not seen yet, where this is for a piece; else empty. */
  public Optional<Expected> onAnyBoard(
      Rig rig,
      Settings settings,
      Exposure exposure,
      int passes,
      Strokes strokes,
      double confidence) {
    return models
        .piece()
        .map(
            fits ->
                expected(
                    fits.charring().general(),
                    fits.clearing().general(),
                    rig,
                    settings,
                    exposure,
                    passes,
                    strokes,
                    confidence));
  }

  private Expected expected(
      ModelFit charFit,
      ModelFit clearing,
      Rig rig,
      Settings settings,
      Exposure exposure,
      int passes,
      Strokes strokes,
      double confidence) {
    double dose = exposure.doseJoulesPerCm2();
    PredictedChance risk = PredictedChance.of(charFit, dose, exposure.intensity(), passes, strokes);
    PredictedChance chance = PredictedChance.of(clearing, dose, exposure.intensity(), passes);
    return new Expected(
        risk.mean(),
        risk.upper(confidence),
        chance.mean(),
        chance.lower(confidence),
        beyond(Math.log(dose), Math.log(exposure.intensity()), passes),
        knobs.untried(settings, rig.scanWidthMillimetres()),
        witnesses.bearOut(Math.log(dose), Math.log(exposure.intensity()), passes, strokes)
            ? OptionalInt.empty()
            : OptionalInt.of(witnesses.unharmedWanted()));
  }

  /** Charred spots per m², a spot being an area as large as the middle one of the patches. */
  public CharredSpots charredSpots(Expected expected) {
    return CharredSpots.of(
        models
            .trials()
            .medianPatchSquareCentimetres()
            .orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES),
        expected.charRiskMean(),
        expected.charRiskUpper());
  }

  private List<Beyond> beyond(double lnDose, double lnIntensity, int passes) {
    if (reach.nearlyHolds(lnDose, lnIntensity, passes)) {
      return List.of();
    }
    List<Beyond> sides = new ArrayList<>();
    int dose = reach.sideOfDoses(lnDose);
    if (dose != 0) {
      sides.add(dose > 0 ? Beyond.HIGHER_DOSE : Beyond.LOWER_DOSE);
    }
    int intensity = reach.sideOfIntensities(lnIntensity);
    if (intensity != 0) {
      sides.add(intensity > 0 ? Beyond.HIGHER_INTENSITY : Beyond.LOWER_INTENSITY);
    }
    if (passes > reach.mostPasses()) {
      sides.add(Beyond.MORE_PASSES);
    } else if (passes < reach.fewestPasses()) {
      sides.add(Beyond.FEWER_PASSES);
    }
    return sides.isEmpty() ? List.of(Beyond.UNLIKE_MIX) : sides;
  }

  /** False where a window of these trials would be called unreliable. */
  public boolean reliable() {
    return models.reliable();
  }

  /** The burn-onset model. */
  public ModelFit charring() {
    return models.charring();
  }

  /** The removal model. */
  public ModelFit clearing() {
    return models.clearing();
  }

  /** The patches behind it. */
  public Trials trials() {
    return models.trials();
  }

  /** Plain counts of what it rests on. */
  public Evidence evidence() {
    return models.trials().evidence();
  }

  /** Both models of the piece that it is for; empty where it is for a board not seen yet. */
  public Optional<PieceFits> pieceFits() {
    return models.piece();
  }

  /** The window of these trials, from the same models. */
  public Recommendation recommend(RigSetup bench, Requirements asked) {
    return new WindowFinder(fitter).recommend(models, bench, asked);
  }
}
