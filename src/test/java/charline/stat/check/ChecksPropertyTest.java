package charline.stat.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What must hold for any risks, tried on seeded ones, and what is refused. */
class ChecksPropertyTest {
  private static final int ROWS = 57;

  private static double[] risks(long seed) {
    Random random = new Random(seed);
    return IntStream.range(0, ROWS)
        .mapToDouble(i -> 0.02 + 0.96 * random.nextInt(20) / 20)
        .toArray();
  }

  private static int[] outcomes(double[] risks, long seed) {
    Random random = new Random(seed);
    return IntStream.range(0, risks.length)
        .map(i -> random.nextDouble() < risks[i] ? 1 : 0)
        .toArray();
  }

  /** Counting every pair, the definition of the area. */
  @Test
  void the_area_is_the_share_of_pairs_in_the_right_order() {
    double[] risks = risks(1);
    int[] outcomes = outcomes(risks, 2);
    double right = 0;
    double pairs = 0;
    for (int i = 0; i < ROWS; i++) {
      for (int j = 0; j < ROWS; j++) {
        if (outcomes[i] == 1 && outcomes[j] == 0) {
          pairs++;
          right += risks[i] > risks[j] ? 1 : risks[i] == risks[j] ? 0.5 : 0;
        }
      }
    }

    assertThat(RiskCheck.of(outcomes, risks).areaUnderCurve().orElseThrow())
        .isCloseTo(right / pairs, within(1e-12));
  }

  @Test
  void a_sure_risk_that_was_right_costs_nothing() {
    RiskCheck check = RiskCheck.of(new int[] {0, 1}, new double[] {0, 1});

    assertThat(check.deviance()).isZero();
    assertThat(check.pearson()).isZero();
    assertThat(check.brier()).isZero();
    assertThat(check.wrongAtHalf()).isZero();
  }

  @Test
  void outcomes_that_are_all_alike_have_no_area() {
    assertThat(RiskCheck.of(new int[] {1, 1}, new double[] {0.5, 0.7}).areaUnderCurve()).isEmpty();
  }

  @Test
  void groups_hold_every_row_once() {
    double[] risks = risks(3);
    int[] outcomes = outcomes(risks, 4);
    for (HosmerLemeshow.Grouping grouping : HosmerLemeshow.Grouping.values()) {
      HosmerLemeshow.Tested tested =
          (HosmerLemeshow.Tested)
              HosmerLemeshow.withDefaults().with(grouping).withGroups(7).test(outcomes, risks);
      assertThat(tested.groups().stream().mapToInt(HosmerLemeshow.Group::rows).sum())
          .isEqualTo(ROWS);
      assertThat(tested.groups().stream().mapToInt(HosmerLemeshow.Group::events).sum())
          .isEqualTo(IntStream.of(outcomes).sum());
      assertThat(tested.probability()).isBetween(0.0, 1.0);
    }
  }

  @Test
  void bad_input_is_refused_with_a_sentence() {
    assertThatThrownBy(() -> RiskCheck.of(new int[] {1}, new double[] {0.5, 0.5}))
        .hasMessage(
            "There must be one risk per outcome, and at least one: 1 outcomes, but 2 risks.");
    assertThatThrownBy(() -> RiskCheck.of(new int[] {1, 0}, new double[] {0.5, Double.NaN}))
        .hasMessage("A risk must lie between 0 and 1, not NaN in row 2.");
    assertThatThrownBy(() -> RiskCheck.of(new int[] {3}, new double[] {0.5}))
        .hasMessage("An outcome must be 0 or 1, not 3 in row 1.");
    assertThatThrownBy(() -> HosmerLemeshow.withDefaults().withGroups(2))
        .hasMessage("Groups must be 3 or more, not 2; 10 is usual.");
    assertThatThrownBy(
            () -> HosmerLemeshow.withDefaults().test(new int[] {0, 1}, new double[] {0, 0.5}))
        .hasMessage(
            "A fitted risk must be neither 0 nor 1, but is 0.0 in row 1; fit with a penalty.");
  }
}
