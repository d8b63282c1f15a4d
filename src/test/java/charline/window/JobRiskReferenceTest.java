package charline.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.refusal.Refusal;
import org.junit.jupiter.api.Test;

/**
 * The chance of at least one event in m tries, against de Méré's dice (W. Feller, An Introduction
 * to Probability Theory and Its Applications, vol. 1, 3rd ed. 1968, ch. II: 0.5177 for a six in
 * four throws, 0.4914 for a double six in twenty-four; from memory, and plain arithmetic).
 */
class JobRiskReferenceTest {
  @Test
  void a_job_is_many_throws_of_the_same_die() {
    JobRisk job = JobRisk.of(4 * 25e-4, 25, 1.0 / 36, 1.0 / 6);

    assertThat(job.areas()).isEqualTo(4);
    assertThat(job.upper()).isCloseTo(0.5177, within(5e-5));
    assertThat(JobRisk.of(24 * 25e-4, 25, 1.0 / 36, 1).mean()).isCloseTo(0.4914, within(5e-5));
  }

  @Test
  void a_tiny_risk_over_many_areas_keeps_its_digits() {
    JobRisk job = JobRisk.of(1000, 1, 1e-12, 1);

    assertThat(job.areas()).isEqualTo(10_000_000);
    assertThat(job.mean()).isCloseTo(1e-5, within(1e-10));
    assertThat(job.upper()).isEqualTo(1);
    assertThat(job.marksMean()).isCloseTo(1e-5, within(1e-15));
  }

  @Test
  void a_part_of_an_area_counts_as_one() {
    assertThat(JobRisk.of(0.25, 25, 0, 0).areas()).isEqualTo(100);
    assertThat(JobRisk.of(0.2501, 25, 0, 0).areas()).isEqualTo(101);
    assertThat(JobRisk.of(1e-9, 25, 0, 0).areas()).isEqualTo(1);
  }

  @Test
  void an_area_or_risk_that_cannot_be_is_refused() {
    assertThatThrownBy(() -> JobRisk.of(0, 25, 0.1, 0.2))
        .hasMessage("Area of the job must be above 0 m2, not 0 m2.");
    assertThatThrownBy(() -> JobRisk.of(1, -3, 0.1, 0.2))
        .hasMessage("Patch size must be above 0 cm2, not -3 cm2.");
    assertThatThrownBy(() -> JobRisk.of(1, 25, Double.NaN, 0.2))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("Char risk must be between 0 and 1");
  }
}
