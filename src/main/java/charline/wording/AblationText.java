package charline.wording;

import static charline.quantity.Figures.three;

import charline.model.classical.AblationFit;
import charline.model.classical.AblationOutcome;
import charline.model.classical.AblationOutcome.NoAblation;
import charline.quantity.Figures;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ablation law where depth was measured. */
public final class AblationText {
  private AblationText() {}

  /** A section that begins with a blank line; nothing where no depth was noted. */
  public static String of(Optional<AblationOutcome> outcome) {
    return outcome.map(AblationText::text).orElse("");
  }

  private static String text(AblationOutcome outcome) {
    if (outcome instanceof NoAblation none) {
      return "\n" + Table.paragraph(none.reason()) + "\n";
    }
    AblationFit law = (AblationFit) outcome;
    return "\nAblation law, depth per pulse = (1/alpha) ln(F/Fth)\n"
        + line(threshold(law))
        + line(
            "1/alpha %s um per pulse for each factor 2.72 of fluence (standard error %s); scatter %s um, R2 %s."
                .formatted(
                    three(law.micrometresPerEFold()),
                    three(law.micrometresPerEFoldError()),
                    three(law.scatterMicrometres()),
                    Figures.two(law.rSquared())))
        + line(
            "Fitted by least squares on ln F to %d patches with residue left, %s to %s J/cm2. Each gives one depth, the last before the coat was through, divided by its passes and by the %s pulses that a point gets in a pass (dose over fluence): depth per pass would change with speed alone."
                .formatted(
                    law.patches(),
                    three(law.lowestFluence()),
                    three(law.highestFluence()),
                    pulses(law)));
  }

  private static String pulses(AblationFit law) {
    String fewest = three(law.fewestPulses());
    String most = three(law.mostPulses());
    return fewest.equals(most) ? fewest : fewest + " to " + most;
  }

  private static String threshold(AblationFit law) {
    String sure = Figures.share(law.confidence());
    String found = "Threshold fluence Fth %s J/cm2".formatted(three(law.thresholdJoulesPerCm2()));
    if (!law.unbounded()) {
      return found
          + ", %s interval %s (Fieller)."
              .formatted(
                  sure,
                  Figures.bounds(
                      law.threshold().low().getAsDouble(), law.threshold().high().getAsDouble()));
    }
    return found
        + ", %s interval UNBOUNDED (Fieller): the depths do not clearly rise with fluence, and %s agrees with them. Measure at powers further apart."
            .formatted(
                sure,
                law.atMost().isPresent()
                    ? "any threshold up to "
                        + Figures.threeUp(law.atMost().getAsDouble())
                        + " J/cm2"
                    : "any threshold at all");
  }

  private static String line(String sentence) {
    return Table.paragraph(sentence) + "\n";
  }

  /** The same as JSON; empty where no depth was noted. */
  public static Optional<Json> json(Optional<AblationOutcome> outcome) {
    return outcome.map(AblationText::json);
  }

  private static Json json(AblationOutcome outcome) {
    Optional<AblationFit> law =
        outcome instanceof AblationFit fit ? Optional.of(fit) : Optional.empty();
    return new Json()
        .put("response", "um per pulse")
        .put("patches", outcome instanceof NoAblation none ? none.measured() : law.get().patches())
        .put("threshold_j_cm2", law.map(AblationFit::thresholdJoulesPerCm2))
        .atLeast(
            "threshold_low_j_cm2", law.map(l -> l.threshold().low()).orElse(OptionalDouble.empty()))
        .atMost(
            "threshold_high_j_cm2",
            law.map(l -> l.threshold().high()).orElse(OptionalDouble.empty()))
        .put("confidence", law.map(AblationFit::confidence))
        .put("um_per_e_fold", law.map(AblationFit::micrometresPerEFold))
        .put("um_per_e_fold_standard_error", law.map(AblationFit::micrometresPerEFoldError))
        .put("r_squared", law.map(AblationFit::rSquared))
        .put(
            "no_law_reason",
            outcome instanceof NoAblation none ? Optional.of(none.reason()) : Optional.empty());
  }
}
