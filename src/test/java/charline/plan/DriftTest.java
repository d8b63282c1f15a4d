package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Settings;
import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Stratum;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Control patches and power checks of a rig that keeps, loses or regains its power. */
class DriftTest {
  private static final Settings CONTROL = InventedShop.BENCH.settings(60, 50);
  private static final OffsetDateTime MONDAY = OffsetDateTime.parse("2026-11-02T08:00:00+01:00");

  /**
   * Twelve patches that vary, then control patches, the beam at a share of its power from one on.
   */
  private static List<Patch> burned(int controls, int weakerFrom, double share) {
    InventedShop shop = InventedShop.draw(1.6, 0.05, 2);
    for (int k = 0; k < 12; k++) {
      shop.burn(InventedShop.BENCH.settings(60, 11 + 6 * k), k % 3, 4);
    }
    for (int k = 0; k < controls; k++) {
      double power = k >= weakerFrom ? 60 * share : 60;
      shop.burn(InventedShop.BENCH.settings(power, 50), k % 3, 6);
    }
    List<Patch> patches = new ArrayList<>();
    for (Patch p : shop.patches()) {
      boolean control = patches.size() >= 12;
      patches.add(
          new Patch(
              p.id(),
              p.code(),
              p.burnedAt(),
              p.rig(),
              p.board(),
              p.finish(),
              control ? CONTROL : p.settings(), // the dial says what it always said
              p.areaSquareCentimetres(),
              p.readings()));
    }
    return patches;
  }

  private static Drift drift(List<Patch> patches) {
    return Drift.of(
        InventedShop.HERON,
        List.of(new Trials(Stratum.of(patches.get(0)), patches, false)),
        Fitter.withDefaults());
  }

  @Test
  void a_rig_that_keeps_its_power_shows_no_drift() {
    Drift drift = drift(burned(16, 16, 1));

    assertThat(drift.watches()).hasSize(1);
    assertThat(drift.watches().get(0).points()).hasSize(16);
    assertThat(drift.since()).isEmpty();
    assertThat(drift.advice()).isEmpty();
  }

  @Test
  void control_patches_that_clear_late_date_the_loss_of_power() {
    List<Patch> patches = burned(20, 10, 0.55);
    Drift drift = drift(patches);

    assertThat(drift.since()).isPresent();
    assertThat(drift.watches().get(0).weaker()).isTrue();
    // to within two control patches of the one on which the beam fell off
    assertThat(drift.since().get())
        .isBetween(patches.get(12 + 8).burnedAt(), patches.get(12 + 12).burnedAt());
    assertThat(drift.advice())
        .hasValue(
            "Rig Heron has drifted since 2026-11-02: check the protective window, the spot and the meter, and burn a control patch before anything else.");
    assertThat(drift.outdates(patches)).isTrue();
    assertThat(drift.outdates(patches.subList(12 + 13, patches.size()))).isFalse();
  }

  @Test
  void a_fall_in_metered_power_is_a_drift_and_a_meters_own_scatter_is_not() {
    assertThat(Drift.of(checked(200, 197, 203, 199), List.of(), Fitter.withDefaults()).since())
        .isEmpty();

    Drift fallen = Drift.of(checked(200, 199, 176, 174), List.of(), Fitter.withDefaults());
    assertThat(fallen.since()).hasValue(MONDAY.plusDays(2));
    assertThat(fallen.watches().get(0).weaker()).isTrue();

    Drift risen = Drift.of(checked(180, 181, 205, 207), List.of(), Fitter.withDefaults());
    assertThat(risen.watches().get(0).weaker()).isFalse();
  }

  @Test
  void a_rig_without_control_patches_and_checks_has_nothing_to_be_watched() {
    assertThat(drift(burned(2, 2, 1)).watches()).isEmpty();
  }

  private static Rig checked(double... metered) {
    List<PowerCheck> checks = new ArrayList<>();
    for (double watts : metered) {
      checks.add(
          new PowerCheck(new UUID(9, checks.size()), MONDAY.plusDays(checks.size()), 100, watts));
    }
    Rig heron = InventedShop.HERON;
    return new Rig(
        heron.id(),
        heron.name(),
        heron.emission(),
        heron.ratedWatts(),
        heron.wavelengthNanometres(),
        heron.spotDefinition(),
        heron.spotMillimetres(),
        heron.repetitionKilohertz(),
        heron.pulseNanoseconds(),
        heron.scanWidthMillimetres(),
        heron.lens(),
        checks);
  }
}
