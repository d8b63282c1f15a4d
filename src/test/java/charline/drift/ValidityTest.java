package charline.drift;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Fitter;
import charline.model.Trials;
import charline.plan.InventedShop;
import charline.trial.Caution;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.wording.DriftText;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Windows of a rig that keeps its power, of one that lost it, and of one that burned nothing. */
class ValidityTest {
  private static final UUID ANOTHER = new UUID(1, 1);

  private static Trials burned() {
    InventedShop shop = InventedShop.draw(1.6, 0.05, 2);
    for (int k = 0; k < 6; k++) {
      shop.burn(InventedShop.BENCH.settings(60, 11 + 6 * k), k % 3, 4);
    }
    return new Trials(Stratum.of(shop.patches().get(0)), shop.patches(), false);
  }

  /** A rig metered at full power, then at a share of it. */
  private static Rig checked(UUID id, OffsetDateTime first, double share) {
    Rig heron = InventedShop.HERON;
    return RigBuilder.like(heron)
        .id(id)
        .checks(
            List.of(
                new PowerCheck(new UUID(9, 0), first, 100, 200),
                new PowerCheck(new UUID(9, 1), first.plusDays(5), 100, 200 * share)))
        .build();
  }

  private static Validity validity(UUID rig, OffsetDateTime first, double share) {
    return Validity.of(checked(rig, first, share), burned(), Fitter.withDefaults());
  }

  @Test
  void trials_from_before_a_drift_make_no_valid_window() {
    Validity validity = validity(InventedShop.HERON.id(), InventedShop.DAY, 0.8);

    assertThat(validity.untried()).isFalse();
    assertThat(DriftText.notValid(validity))
        .hasValue(
            new Caution(
                "Not valid",
                "Rig Heron has drifted since 2026-11-07: check the protective window, the spot and"
                    + " the meter, and burn a control patch before anything else. Trials from"
                    + " before then do not describe the rig as it is now.",
                "common practice, no published source"));
  }

  @Test
  void a_steady_rig_and_trials_from_after_a_drift_make_a_valid_one() {
    assertThat(DriftText.notValid(validity(InventedShop.HERON.id(), InventedShop.DAY, 0.99)))
        .isEmpty();
    assertThat(
            DriftText.notValid(
                validity(InventedShop.HERON.id(), InventedShop.DAY.minusDays(9), 0.8)))
        .isEmpty();
  }

  @Test
  void a_rig_that_burned_none_of_the_trials_is_untried_and_its_drift_outdates_none() {
    Validity validity = validity(ANOTHER, InventedShop.DAY, 0.8);

    assertThat(validity.untried()).isTrue();
    assertThat(DriftText.notValid(validity)).isEmpty();
  }
}
