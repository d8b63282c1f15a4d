package charline.window;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.AreaRate;
import charline.exposure.Exposure;
import charline.model.Event;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Reading;
import charline.wording.ReasonText;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A limit that no patch crossed holds as far as patches bear it out, and no further. */
class SupportingPatchesTest {
  private static final OffsetDateTime TODAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");

  private static final Trials TRIALS = ReferenceStrata.trials("latex", "pine");

  private static Trials of(List<Patch> patches) {
    return new Trials(TRIALS.stratum(), patches, false);
  }

  private static Recommendation recommend(Trials trials) {
    RigSetup bench = RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), TODAY);
    return WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
  }

  private static List<Patch> only(Predicate<Reading> kept) {
    return TRIALS.patches().stream()
        .filter(p -> p.readings().stream().anyMatch(kept))
        .map(p -> Pieces.withReadings(p, p.readings().stream().filter(kept).toList()))
        .toList();
  }

  private static Stream<Box> boxes(Recommendation answer) {
    return Stream.concat(answer.chosen().stream(), answer.alternatives().stream());
  }

  @Test
  void where_both_limits_were_crossed_only_patches_of_the_same_way_count() {
    SupportingPatches witnesses = new SupportingPatches(TRIALS);
    assertThat(witnesses.charSeen()).isTrue();
    assertThat(witnesses.finishSeen()).isTrue();
    assertThat(witnesses.askingForNone().lnHottest(0, 1)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(witnesses.lnHottest(0, 1)).isFinite();
    assertThat(witnesses.lnColdest(0, 1)).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  @Test
  void without_char_six_patches_at_least_as_hot_came_through_every_hot_corner() {
    Trials stoppedInTime = of(only(r -> !r.outcome().charred()));
    Recommendation answer = recommend(stoppedInTime);
    assertThat(boxes(answer)).isNotEmpty();
    boxes(answer)
        .forEach(
            box ->
                assertThat(
                        stoppedInTime.patches().stream()
                            .filter(p -> atLeastAsHot(p, box.hotCorner()))
                            .count())
                    .as("%s", box.hotCorner())
                    .isGreaterThanOrEqualTo(6));
  }

  @Test
  void no_place_of_the_map_is_said_to_be_tried_that_six_patches_do_not_bear_out() {
    Trials stoppedInTime = of(only(r -> !r.outcome().charred()));
    Recommendation answer = recommend(stoppedInTime);
    WindowMap map = answer.map().orElseThrow();
    List<MapCell> tried = map.rows().stream().flatMap(List::stream).filter(MapCell::tried).toList();
    assertThat(tried).isNotEmpty();
    for (MapCell cell : tried) {
      Exposure there =
          answer.bench().exposure(cell.powerPercent(), cell.speedMillimetresPerSecond());
      assertThat(stoppedInTime.patches().stream().filter(p -> atLeastAsHot(p, there, map.passes())))
          .as("%s", cell)
          .hasSizeGreaterThanOrEqualTo(6);
    }
  }

  /** At one spot and rate, dose over intensity is the time that the beam stays. */
  private static double slowness(Exposure exposure) {
    return exposure.doseJoulesPerCm2() / exposure.intensity();
  }

  private static boolean atLeastAsHot(Patch patch, Forecast corner) {
    return atLeastAsHot(
        patch,
        new Exposure(
            corner.powerWatts(), corner.doseJoulesPerCm2(), corner.intensity(), new AreaRate(1)),
        corner.passes());
  }

  private static boolean atLeastAsHot(Patch patch, Exposure there, int passes) {
    return patch.exposure().doseJoulesPerCm2() >= there.doseJoulesPerCm2() * (1 - 1e-9)
        && patch.exposure().intensity() >= there.intensity() * 0.97
        && slowness(patch.exposure()) >= slowness(there) * 0.97
        && patch.lastReading().passes() >= passes;
  }

  @Test
  void without_finish_left_six_patches_at_most_as_hot_had_cleared_by_every_cold_corner() {
    Trials allClear = of(only(r -> r.outcome().cleared(false)));
    Recommendation answer = recommend(allClear);
    assertThat(new SupportingPatches(allClear).finishSeen()).isFalse();
    assertThat(boxes(answer)).isNotEmpty();
    boxes(answer)
        .forEach(
            box ->
                assertThat(
                        allClear.patches().stream()
                            .filter(p -> clearedNoHotter(p, box.coldCorner()))
                            .count())
                    .as("%s", box.coldCorner())
                    .isGreaterThanOrEqualTo(6));
  }

  private static boolean clearedNoHotter(Patch patch, Forecast corner) {
    return patch.exposure().doseJoulesPerCm2() <= corner.doseJoulesPerCm2() * (1 + 1e-9)
        && patch.exposure().intensity() <= corner.intensity() * 1.03
        && patch.readings().stream()
            .anyMatch(
                r -> r.passes() <= corner.passes() && Event.CLEARING.shownBy(r.outcome(), false));
  }

  @Test
  void too_few_that_came_through_are_told_of() {
    List<Patch> weak =
        only(r -> !r.outcome().charred() && r.passes() == 1).stream()
            .map(p -> Pieces.withReadings(p, List.of(Pieces.seen("clean", p.readings().get(0)))))
            .toList();
    Recommendation answer = recommend(of(spread(weak)));
    assertThat(answer.verdict()).isEqualTo(Verdict.NOT_YET);
    assertThat(ReasonText.of(answer))
        .contains(
            "No patch charred, so the trials give only a lower limit for where the wood begins to"
                + " burn.")
        .contains(
            "Until a patch has charred, a window includes only settings that at least 6 unharmed"
                + " patches support, each at least as hot in every respect.")
        .contains(
            "Until 3 patches have kept finish, a window includes only settings that at least 6"
                + " cleared patches support, each at most as hot in every respect.");
  }

  /** Six patches on all boards: each is at least as hot as few others. */
  private static List<Patch> spread(List<Patch> patches) {
    return patches.subList(0, 6);
  }

  @Test
  void a_tint_counts_as_finish_left_unless_it_is_accepted() {
    Patch any = TRIALS.patches().get(0);
    Reading tint = Pieces.seen("tint", any.readings().get(0));
    Trials strict = of(List.of(Pieces.withReadings(any, List.of(tint))));
    assertThat(strict.patchesSeenUncleared()).isEqualTo(1);
    assertThat(strict.acceptingTint(true).patchesSeenUncleared()).isZero();
  }
}
