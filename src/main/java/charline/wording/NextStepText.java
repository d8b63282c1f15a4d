package charline.wording;

import charline.quantity.Figures;
import charline.window.NextStep;
import charline.window.Recommendation;
import java.util.List;
import java.util.stream.Collectors;

/** What to do after a verdict, in sentences. */
public final class NextStepText {
  private NextStepText() {}

  /** All next steps of an answer. */
  public static String of(Recommendation found) {
    return of(found.nextSteps());
  }

  /** Several steps, in their order. */
  public static String of(List<NextStep> steps) {
    return steps.stream().map(NextStepText::of).collect(Collectors.joining(" "));
  }

  private static String of(NextStep step) {
    if (step instanceof NextStep.CheckPatch check) {
      return "Check this patch first: " + FindingText.of(check.finding());
    }
    if (step instanceof NextStep.ConfirmOnPiece) {
      return "Before the piece itself, burn three patches at the start setting on a hidden spot of"
          + " it. Judge them cold and wiped; stop at the first brown.";
    }
    if (step instanceof NextStep.UseAnotherMethod) {
      return "Use another method for this finish on this wood. Another pulse length, spot or"
          + " wavelength would need a new set of trials, from the lowest rung.";
    }
    if (step instanceof NextStep.ClimbFromLowest) {
      return "Burn patches with this rig, from the lowest rung up, one knob at a time.";
    }
    if (step instanceof NextStep.GoCooler) {
      return "Go back down the ladder: every dose near the best setting has charred before. Burn"
          + " cooler patches first, on a board not used yet.";
    }
    if (step instanceof NextStep.BurnPatches burn) {
      return "Burn at %s %%, %s %s mm/s in that order, on a board not used yet, judging after every pass up to %s; then ask again."
          .formatted(
              Figures.three(burn.powerPercent()),
              burn.speed().words(),
              burn.speedsMillimetresPerSecond().stream()
                  .map(speed -> Figures.digits(speed, 2))
                  .collect(Collectors.joining(", ")),
              Figures.passes(burn.passes()));
    }
    return "Check these patches for a mistyped setting or a wrong outcome and amend it; if all are"
        + " right, split what differs (wood, coats, rig state) into separate strata.";
  }
}
