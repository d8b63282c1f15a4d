package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a promised dose means: the chance on a new board there. */
class PromisedDosePropertyTest {
  @ParameterizedTest
  @CsvSource({"0.05, 0.9, 1", "0.02, 0.8, 3", "0.05, 0.5, 1", "0.2, 0.95, 2"})
  void at_the_dose_promised_against_char_the_bound_is_just_the_asked_risk(
      double risk, double confidence, int passes) {
    ModelFit fit = Fitter.withDefaults().beforeTrials(Event.CHAR, Emission.PULSED, 1);
    double dose = Math.exp(fit.lnPromisedDose(risk, confidence, 0, passes));

    assertThat(chance(fit, dose, passes, confidence)).isCloseTo(risk, within(risk / 50));
  }

  @ParameterizedTest
  @CsvSource({"0.9, 0.9, 1", "0.8, 0.8, 3", "0.9, 0.5, 1"})
  void at_the_dose_promised_to_clear_the_bound_is_just_the_asked_chance(
      double chance, double confidence, int passes) {
    ModelFit fit = Fitter.withDefaults().beforeTrials(Event.CLEARING, Emission.PULSED, 1);
    double dose = Math.exp(fit.lnPromisedDose(chance, confidence, 0, passes));

    assertThat(chance(fit, dose, passes, 1 - confidence))
        .isCloseTo(chance, within((1 - chance) / 50));
  }

  /**
   * Passes and dose are two readings of one limit: a draw is within one where it is in the other.
   * Neighbouring draws lie less than a hundredth apart.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 2", "0.5, 5", "0.9, 3"})
  void as_many_passes_are_said_for_a_dose_as_the_dose_is_the_limit_of(double chance, int passes) {
    DoseLimit limit =
        Fitter.withDefaults()
            .beforeTrials(Event.CLEARING, Emission.PULSED, 1)
            .posterior()
            .doseLimit(chance);
    double lnIntensity = Math.log(1.5);

    assertThat(limit.passes(limit.lnDose(0.5, lnIntensity, passes), lnIntensity).median())
        .isCloseTo(passes, within(1e-2 * passes));
    assertThat(limit.passes(limit.lnDose(0.05, lnIntensity, passes), lnIntensity).low())
        .isCloseTo(passes, within(1e-2 * passes));
    assertThat(limit.passes(limit.lnDose(0.95, lnIntensity, passes), lnIntensity).high())
        .isCloseTo(passes, within(1e-2 * passes));
    Estimate plenty = limit.passes(Math.log(1e6), lnIntensity);
    assertThat(plenty).isEqualTo(new Estimate(1, 1, 1));
  }

  private static double chance(ModelFit fit, double dose, int passes, double probability) {
    Posterior posterior = fit.posterior();
    return posterior.quantile(posterior.newBoardChance(dose, 1, passes), probability);
  }
}
