package charline.wording;

import charline.quantity.Figures;
import charline.window.NextStep;
import java.util.List;
import java.util.stream.Collectors;

/** What to do after a verdict, in sentences. */
public final class NextStepText {
  private static final List<String> COUNTS =
      List.of("one control patch", "two control patches", "three control patches");

  private NextStepText() {}

  /** Several steps, in their order. */
  public static String of(List<NextStep> steps) {
    return steps.stream().map(NextStepText::of).collect(Collectors.joining(" "));
  }

  private static String of(NextStep step) {
    if (step instanceof NextStep.CheckPatch check) {
      return "Check this patch first: " + FindingText.of(check.finding());
    }
    if (step instanceof NextStep.ConfirmOnPiece confirm) {
      return "Before the piece itself, burn %s at the start setting on a hidden spot of it. Judge %s cold and wiped; stop at the first brown."
          .formatted(COUNTS.get(confirm.controls() - 1), confirm.controls() == 1 ? "it" : "them");
    }
    if (step instanceof NextStep.LookAtControls look) {
      return "Look at %s again, cold and wiped, and amend the outcome if it is wrong. If it is right, work no more of the piece with these settings: burn the patches listed, coolest first, and ask again."
          .formatted(String.join(", ", look.patches()));
    }
    if (step instanceof NextStep.UseAnotherMethod) {
      return "Use another method for this finish on this wood. Another pulse length, spot or"
          + " wavelength would need a new set of trials, from the lowest rung.";
    }
    if (step instanceof NextStep.CloserLines closer) {
      return "Set the line spacing to %s mm, half of the spot, or less, and ask again."
          .formatted(Figures.three(closer.spotMillimetres() / 2));
    }
    if (step instanceof NextStep.BurnNextPatches) {
      return "Burn the patches listed, in their order; then ask again.";
    }
    return "Check these patches for a mistyped setting or a wrong outcome and amend it; if all are"
        + " right, split what differs (wood, coats, rig state) into separate strata.";
  }
}
