package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Exact binomial bounds. Zero failures: closed form, 0.95^59 = 0.0484945 and 0.95^58 = 0.0510469;
 * the run of 59 is the textbook number for 5 % at 95 % (Hahn and Meeker, Statistical Intervals,
 * 1991, from memory). With failures: Clopper and Pearson (1934); 1 of 10 at one-sided 95 % is
 * 0.3942, of any table of one-sided binomial limits (from memory, recomputed from the binomial sum
 * below).
 */
class CleanRunReferenceTest {
  @ParameterizedTest
  @CsvSource({"59, 0.0495076", "20, 0.139108", "10, 0.258866", "5, 0.450720"})
  void a_clean_run_supports_the_risk_of_its_closed_form(int clean, double risk) {
    assertThat(new CleanRun(0, clean).upperRisk(0.95)).isCloseTo(risk, within(5e-7));
  }

  @Test
  void fifty_nine_clean_patches_support_five_percent_and_fifty_eight_do_not() {
    assertThat(CleanRun.needed(0.05, 0.95)).isEqualTo(59);
    assertThat(new CleanRun(0, 59).upperRisk(0.95)).isLessThanOrEqualTo(0.05);
    assertThat(new CleanRun(0, 58).upperRisk(0.95)).isGreaterThan(0.05);
    assertThat(CleanRun.needed(0.05, 0.90)).isEqualTo(45);
  }

  @Test
  void at_the_bound_as_few_bad_ones_are_as_rare_as_the_confidence_leaves() {
    double p = new CleanRun(1, 10).upperRisk(0.95);
    double atMostOne = Math.pow(1 - p, 10) + 10 * p * Math.pow(1 - p, 9);

    assertThat(p).isCloseTo(0.3942, within(5e-5));
    assertThat(atMostOne).isCloseTo(0.05, within(1e-8));
  }

  @Test
  void without_patches_or_with_bad_ones_only_any_risk_is_possible() {
    assertThat(new CleanRun(0, 0).upperRisk(0.9)).isEqualTo(1);
    assertThat(new CleanRun(3, 3).upperRisk(0.9)).isEqualTo(1);
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> new CleanRun(4, 3))
        .withMessage("Bad patches must be between 0 and all 3 patches, not 4.");
  }
}
