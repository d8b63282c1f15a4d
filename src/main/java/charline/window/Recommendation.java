package charline.window;

import charline.model.Evidence;
import charline.model.ModelFit;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * The answer for one stratum.
 *
 * @param stratum what it is about
 * @param asked what the window has to keep
 * @param evidence plain counts
 * @param bench the rig and its fixed knobs
 * @param verdict what can be said
 * @param reasons why, in the order of telling
 * @param nextSteps what to do now, in order
 * @param standing how settled a window is, where that needs to be said
 * @param tried what was tried in every knob
 * @param chanceAnyWindow posterior chance that any setting keeps what was asked
 * @param chosen the box with the best net area rate, present only for {@link Verdict#WINDOW}
 * @param alternatives boxes for other numbers of passes, passes rising
 * @param map map for the chosen passes, or for the passes with the best hope where there is no box;
 *     empty where the models could not be fitted
 * @param medianPatchSquareCentimetres size that "patch-sized area" means here, if recorded
 * @param charFit the burn-onset model; empty where there is nothing to fit
 * @param clearingFit the removal model; empty where there is nothing to fit
 * @param piece what the piece that it is for adds; empty where it is for any board
 * @param patches the trials behind it
 * @param clearsWithoutTint where tint is accepted, yet the models are surer that the start setting
 *     clears without any: the lower bound of that chance
 */
public record Recommendation(
    Stratum stratum,
    Requirements asked,
    Evidence evidence,
    RigSetup bench,
    Verdict verdict,
    List<Reason> reasons,
    List<NextStep> nextSteps,
    Optional<Standing> standing,
    TriedKnobs tried,
    double chanceAnyWindow,
    Optional<Box> chosen,
    List<Box> alternatives,
    Optional<WindowMap> map,
    OptionalDouble medianPatchSquareCentimetres,
    Optional<ModelFit> charFit,
    Optional<ModelFit> clearingFit,
    Optional<PieceEvidence> piece,
    List<Patch> patches,
    OptionalDouble clearsWithoutTint) {
  public Recommendation {
    reasons = List.copyOf(reasons);
    nextSteps = List.copyOf(nextSteps);
    alternatives = List.copyOf(alternatives);
    patches = List.copyOf(patches);
  }

  /** Size of the area that a risk is about, in cm²: as recorded, else the usual one. */
  public double patchSquareCentimetres() {
    return medianPatchSquareCentimetres.orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES);
  }

  /** Charred spots per m² at a setting. */
  public CharredSpots charredSpots(Forecast forecast) {
    return CharredSpots.of(
        patchSquareCentimetres(), forecast.charRiskMean(), forecast.charRiskUpper());
  }

  /** What has to be known beside the verdict, the weightiest first. */
  public List<Proviso> provisos() {
    return Proviso.of(
        asked.charRisk(),
        patches,
        chosen
            .map(box -> OptionalInt.of(bench.strokes().mostPasses(box.passes())))
            .orElse(OptionalInt.empty()),
        clearsWithoutTint.isPresent()
            ? Optional.of(
                new Proviso.TintLeavesLess(
                    chosen.orElseThrow().start().clearChanceLower(),
                    clearsWithoutTint.getAsDouble()))
            : Optional.empty(),
        clearingFit);
  }

  /** Control patches on the piece that the window still asks for; 0 where it asks for none. */
  public int controlsWanting() {
    return nextSteps.stream()
        .filter(NextStep.ConfirmOnPiece.class::isInstance)
        .mapToInt(step -> ((NextStep.ConfirmOnPiece) step).controls())
        .sum();
  }

  /** Codes of control patches on the piece that charred and so took the window back. */
  public List<String> charredControls() {
    return piece.map(known -> known.controls().charred()).orElse(List.of());
  }

  /** Boards that a window takes at least: three, or five where these are seen to differ. */
  public int boardsWanted() {
    return Findings.boardsWanted(
        Stream.of(charFit, clearingFit)
            .flatMap(Optional::stream)
            .mapToDouble(fit -> fit.omega().median())
            .max()
            .orElse(0));
  }
}
