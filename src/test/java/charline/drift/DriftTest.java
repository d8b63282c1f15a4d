package charline.drift;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Figure;
import charline.exposure.Settings;
import charline.model.Fitter;
import charline.model.Trials;
import charline.plan.InventedShop;
import charline.trial.Circumstances;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Place;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.trial.Tone;
import charline.trial.Upkeep;
import charline.wording.DriftText;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Control patches and power checks of a rig that keeps, loses or regains its power. */
class DriftTest {
  private static final Settings CONTROL = InventedShop.BENCH.settings(60, 50);
  private static final OffsetDateTime MONDAY = OffsetDateTime.parse("2026-11-02T08:00:00+01:00");

  private static final Finish DARK = coated(1, Tone.DARK, 90);
  private static final Finish PALE = coated(2, Tone.PALE, 90);
  private static final Finish THICK = coated(3, Tone.DARK, 200);

  /**
   * Pale and thick coats take twice as much; the shop knows one coat only, so it burns with less.
   */
  private static final double HARDER = 0.5;

  private static Finish coated(int number, Tone tone, double micrometres) {
    Coat coat = new Coat("latex", Optional.of(tone), OptionalDouble.of(micrometres));
    return new Finish(new UUID(2, number), "shutter " + number, "latex", List.of(coat));
  }

  /**
   * Twelve patches that vary, then control patches, the beam at a share of its power from one on.
   */
  private static List<Patch> burned(int controls, int weakerFrom, double share) {
    return burned(Collections.nCopies(controls, DARK), weakerFrom, share);
  }

  /**
   * The same with a finish for each control patch; the twelve before have them in turn.
   *
   * @param share of its power that the beam has from control patch {@code weakerFrom} on
   */
  private static List<Patch> burned(List<Finish> controls, int weakerFrom, double share) {
    InventedShop shop = InventedShop.draw(1.6, 0.05, 2);
    List<Finish> finishes = new ArrayList<>();
    List<Finish> kinds = controls.stream().distinct().toList();
    for (int k = 0; k < 12; k++) {
      finishes.add(kinds.get(k / 3 % kinds.size()));
      shop.burn(InventedShop.BENCH.settings(60 * ease(finishes.get(k)), 11 + 6 * k), k % 3, 4);
    }
    for (int k = 0; k < controls.size(); k++) {
      finishes.add(controls.get(k));
      double power = 60 * ease(controls.get(k)) * (k >= weakerFrom ? share : 1);
      shop.burn(InventedShop.BENCH.settings(power, 50), k % 3, 8);
    }
    List<Patch> patches = new ArrayList<>();
    for (Patch p : shop.patches()) {
      int k = patches.size();
      patches.add(
          new Patch(
              p.id(),
              p.code(),
              p.burnedAt(),
              p.rig(),
              p.board(),
              finishes.get(k),
              // the dial says what it always said
              k < 12 ? InventedShop.BENCH.settings(60, 11 + 6 * k) : CONTROL,
              p.areaSquareCentimetres(),
              p.readings()));
    }
    return patches;
  }

  private static double ease(Finish finish) {
    return finish == DARK ? 1 : HARDER;
  }

  private static List<Finish> inRuns(int first, Finish one, int then, Finish other) {
    List<Finish> controls = new ArrayList<>(Collections.nCopies(first, one));
    controls.addAll(Collections.nCopies(then, other));
    return controls;
  }

  private static List<Finish> inTurn(int count, Finish one, Finish other) {
    return IntStream.range(0, count).mapToObj(k -> k % 2 == 0 ? one : other).toList();
  }

  private static Drift drift(List<Patch> patches) {
    return Drift.of(
        patches.get(0).rig(),
        List.of(new Trials(Stratum.of(patches.get(0)), patches, false)),
        Fitter.withDefaults());
  }

  @Test
  void a_rig_that_keeps_its_power_shows_no_drift() {
    Drift drift = drift(burned(16, 16, 1));

    assertThat(drift.watches()).hasSize(1);
    assertThat(drift.watches().get(0).points()).hasSize(16);
    assertThat(drift.since()).isEmpty();
    assertThat(drift.shift()).isEmpty();
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
    assertThat(drift.shift().map(DriftText::advice))
        .hasValue(
            "Rig Heron has drifted since 2026-11-02: check the protective window, the spot and the"
                + " meter, and burn a control patch before anything else.");
    assertThat(drift.outdates(patches)).isTrue();
    assertThat(drift.outdates(patches.subList(12 + 13, patches.size()))).isFalse();
  }

  static Stream<List<Finish>> two_coats() {
    return Stream.of(
        inRuns(3, DARK, 4, PALE),
        inRuns(8, PALE, 12, DARK),
        inRuns(3, DARK, 8, THICK),
        inRuns(8, THICK, 12, DARK),
        inTurn(16, DARK, PALE));
  }

  @ParameterizedTest
  @MethodSource("two_coats")
  void another_coat_at_the_control_setting_is_no_drift(List<Finish> controls) {
    Drift drift = drift(burned(controls, controls.size(), 1));

    assertThat(drift.watches()).hasSize(1);
    assertThat(drift.watches().get(0).points()).hasSameSizeAs(controls);
    assertThat(drift.since()).isEmpty();
  }

  @Test
  void a_loss_of_power_shows_through_coats_that_take_turns() {
    for (List<Finish> controls : List.of(inTurn(24, DARK, PALE), inTurn(24, PALE, DARK))) {
      List<Patch> patches = burned(controls, 12, 0.55);
      Drift drift = drift(patches);

      assertThat(drift.watches().get(0).weaker()).isTrue();
      assertThat(drift.since().orElseThrow())
          .isBetween(patches.get(12 + 10).burnedAt(), patches.get(12 + 14).burnedAt());
    }
  }

  @Test
  void a_loss_of_power_shows_on_the_coat_burned_less_often_too() {
    List<Patch> patches = burned(inRuns(14, DARK, 13, PALE), 14 + 4, 0.55);
    Drift drift = drift(patches);

    assertThat(drift.watches().get(0).weaker()).isTrue();
    assertThat(drift.since().orElseThrow())
        .isBetween(patches.get(12 + 14 + 2).burnedAt(), patches.get(12 + 14 + 6).burnedAt());
  }

  @Test
  void a_setting_is_a_control_where_one_coat_had_it_three_times() {
    assertThat(drift(burned(inTurn(4, DARK, PALE), 4, 1)).watches()).isEmpty();
    assertThat(drift(burned(inTurn(5, DARK, PALE), 5, 1)).watches().get(0).points()).hasSize(3);
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

  /** Burned with a figure, on a place. */
  private static Patch made(Patch patch, Figure figure, Place place) {
    return patch.with(
        Circumstances.of(Map.of(Knob.FIGURE, figure.word(), Knob.PLACE, place.word())));
  }

  @Test
  void control_patches_of_another_figure_or_place_are_no_drift() {
    // As if the beam were weaker from the tenth control patch on, which was burned with a circle.
    List<Patch> patches = burned(20, 10, 0.55);
    for (Function<Patch, Patch> other :
        List.<Function<Patch, Patch>>of(
            p -> made(p, Figure.CIRCLE, Place.FACE), p -> made(p, Figure.LINE, Place.KNOT))) {
      List<Patch> apart = new ArrayList<>();
      for (int i = 0; i < patches.size(); i++) {
        apart.add(
            i < 12 + 10
                ? made(patches.get(i), Figure.LINE, Place.FACE)
                : other.apply(patches.get(i)));
      }
      assertThat(drift(apart).since()).isEmpty();
    }
  }

  @Test
  void upkeep_begins_a_new_run_against_the_rig_as_it_was() {
    List<Patch> patches = burned(20, 10, 0.55);
    OffsetDateTime late = patches.get(12 + 18).burnedAt().minusMinutes(1);
    Drift cleaned = drift(keptUp(patches, late));
    assertThat(cleaned.watches().get(0).points())
        .extracting(Drift.Point::run)
        .startsWith(0)
        .endsWith(1, 1);
    assertThat(cleaned.watches().get(0).points().get(18).down()).isZero();
    assertThat(cleaned.since()).as("two patches are too few to see it").isEmpty();

    // Kept up when it fell off: it came back weaker, which its own first patches would hide.
    OffsetDateTime then = patches.get(12 + 10).burnedAt().minusMinutes(1);
    assertThat(drift(keptUp(patches, then)).since()).isPresent();
  }

  @Test
  void upkeep_makes_the_next_control_patch_due() {
    List<Patch> patches = burned(3, 3, 1);
    OffsetDateTime after = patches.get(patches.size() - 1).burnedAt().plusMinutes(1);
    assertThat(ControlPatch.since(patches, InventedShop.HERON, Optional.of(CONTROL))).isZero();
    assertThat(ControlPatch.since(patches, keptUp(after), Optional.of(CONTROL)))
        .isEqualTo(ControlPatch.EVERY);
  }

  private static Rig keptUp(OffsetDateTime at) {
    return RigBuilder.like(InventedShop.HERON)
        .upkeep(
            List.of(
                new Upkeep(
                    new UUID(8, 1),
                    at,
                    "window-cleaned",
                    OptionalDouble.empty(),
                    Optional.empty())))
        .build();
  }

  private static List<Patch> keptUp(List<Patch> patches, OffsetDateTime at) {
    Rig rig = keptUp(at);
    return patches.stream()
        .map(
            p ->
                new Patch(
                    p.id(),
                    p.code(),
                    p.burnedAt(),
                    rig,
                    p.board(),
                    p.finish(),
                    p.settings(),
                    p.areaSquareCentimetres(),
                    p.readings()))
        .toList();
  }

  @Test
  void of_several_shifts_the_earliest_dates_the_drift() {
    OffsetDateTime noon = Pieces.NOON;
    assertThat(
            new Drift(
                    Pieces.rig(1, "Heron", 200),
                    List.of(shifted(noon.plusDays(2)), shifted(noon), shifted(noon.plusDays(1))))
                .since())
        .hasValue(noon);
  }

  private static Drift.Watch shifted(OffsetDateTime since) {
    return new Drift.Watch(new Drift.PowerChecks(), List.of(), 4, Optional.of(since), true);
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
    return RigBuilder.like(heron).checks(checks).build();
  }

  /** 48 W at 30 % and 196 W at 100 % are one sound rig: a source turned down gives less. */
  @Test
  void checks_at_several_settings_are_compared_each_with_its_own() {
    Rig rig = InventedShop.HERON;
    List<PowerCheck> checks = new ArrayList<>();
    for (int day = 0; day < 6; day++) {
      for (double[] metered : new double[][] {{30, 48}, {60, 110}, {100, 196}}) {
        checks.add(
            new PowerCheck(
                new UUID(9, checks.size()), MONDAY.plusDays(day), metered[0], metered[1]));
      }
    }
    assertThat(
            Drift.of(RigBuilder.like(rig).checks(checks).build(), List.of(), Fitter.withDefaults())
                .since())
        .isEmpty();
  }
}
