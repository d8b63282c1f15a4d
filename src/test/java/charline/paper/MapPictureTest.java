package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Emission;
import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.paper.CellRegions.Block;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.window.MapCell;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.window.WindowMap;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class MapPictureTest {
  private static final Patch ANY = BoathousePapers.latexOnPine(Verdict.WINDOW).patches().get(0);

  @Test
  void a_cell_says_which_promise_fails() {
    assertThat(state(true, true, true)).isEqualTo(CellState.KEPT);
    assertThat(state(true, false, true)).isEqualTo(CellState.CHARS);
    assertThat(state(true, true, false)).isEqualTo(CellState.LEAVES);
    assertThat(state(true, false, false)).isEqualTo(CellState.BOTH);
    assertThat(state(false, true, true)).isEqualTo(CellState.UNTRIED);
  }

  /** The zone holds many clean patches: its risk is too high, which is not that it chars. */
  @Test
  void zone_and_legend_say_that_the_wood_may_char_as_the_finish_may_not_clear() {
    assertThat(CellState.CHARS.label()).isEqualTo("may char");
    assertThat(CellState.CHARS.shortLabel()).isEqualTo("may char");
    assertThat(CellState.LEAVES.label()).isEqualTo("may not clear");
    assertThat(CellState.BOTH.label()).isEqualTo("may char, may not clear");
    for (CellState state : CellState.values()) {
      assertThat(state.shortLabel()).doesNotContain("chars");
    }
  }

  @Test
  void blocks_of_all_states_cover_every_cell_once() {
    WindowMap map = BoathousePapers.map(2, 1.2);
    CellRegions regions = CellRegions.of(map);
    int[][] covered = new int[map.powersPercent().size()][map.speedsMillimetresPerSecond().size()];
    int blocks = 0;
    for (CellState state : CellState.values()) {
      for (Block block : regions.blocks(state)) {
        blocks++;
        for (int row = block.row(); row < block.endRow(); row++) {
          for (int column = block.column(); column < block.endColumn(); column++) {
            covered[row][column]++;
            assertThat(CellState.of(map.rows().get(row).get(column))).isEqualTo(state);
          }
        }
      }
    }

    assertThat(Arrays.stream(covered).flatMapToInt(IntStream::of)).containsOnly(1);
    assertThat(blocks).isLessThan(5 * map.powersPercent().size());
  }

  @Test
  void a_patch_of_this_bench_sits_where_it_was_dialled_in() {
    PatchPlaces places = places(settings(40, new HandPass(60, 16), 0.6, 40));

    assertThat(places.places().get(0).powerPercent()).isCloseTo(40, within());
    assertThat(places.places().get(0).speedMillimetresPerSecond()).isCloseTo(16, within());
    assertThat(places.converted()).isZero();
  }

  @Test
  void a_patch_of_another_setting_sits_at_the_power_and_speed_of_its_intensity_and_dose() {
    // A spot 1.2 times as wide has the fluence of 40 / 1.44 % on the bench's spot. Dose is power
    // over
    // width times speed: 40 / (50 x 16) must be p / (60 u), so u = p x 50 x 16 / (60 x 40).
    PatchPlaces places = places(settings(40, new HandPass(50, 16), 0.72, 40));
    double power = 40 / 1.44;

    assertThat(places.places().get(0).powerPercent()).isCloseTo(power, within());
    assertThat(places.places().get(0).speedMillimetresPerSecond())
        .isCloseTo(power * 50 * 16 / (60 * 40), within());
    assertThat(places.converted()).isEqualTo(1);
  }

  @Test
  void a_timed_patch_of_this_bench_needs_no_conversion() {
    PatchPlaces places = places(settings(40, new TimedArea(48, 5), 0.6, 40));

    assertThat(places.places().get(0).speedMillimetresPerSecond()).isCloseTo(16, within());
    assertThat(places.converted()).isZero();
  }

  @Test
  void a_patch_shows_its_latest_reading_up_to_the_passes_of_the_map() {
    Patch patch = patch(ANY.settings(), reading(1, Mark.RESIDUE), reading(3, Mark.CLEAN));

    assertThat(PatchPlaces.of(List.of(patch), bench(), 2).places().get(0).reading().outcome())
        .isEqualTo(Outcome.of(Mark.RESIDUE));
    assertThat(PatchPlaces.of(List.of(patch), bench(), 3).places().get(0).reading().outcome())
        .isEqualTo(Outcome.of(Mark.CLEAN));
  }

  @Test
  void patches_that_cannot_be_drawn_are_counted() {
    Patch off = patch(settings(100, new HandPass(60, 16), 0.3, 40), reading(1, Mark.CHAR));
    Patch later = patch(ANY.settings(), reading(4, Mark.CLEAN));

    assertThat(picture(List.of(off, later)).notes())
        .containsExactly(
            "Latest reading up to 2 passes.",
            "1 burned on another set-up, placed by dose and intensity.",
            "1 patch first read after more than 2 passes, not drawn.",
            "1 patch off this map.");
  }

  @Test
  void patches_at_one_place_stand_side_by_side_with_their_counts() {
    Patch clean = patch(settings(40, new HandPass(60, 16), 0.6, 40), reading(1, Mark.CLEAN));
    Patch charred =
        patch(settings(40, new HandPass(60, 16), 0.6, 40), reading(1, Mark.CHAR, Mark.RESIDUE));
    List<MapPicture.Sign> signs = picture(List.of(clean, charred, clean)).signs();

    assertThat(signs)
        .extracting(MapPicture.Sign::sign)
        .containsExactly(PatchSign.CLEAN, PatchSign.CHAR);
    assertThat(signs).extracting(MapPicture.Sign::note).containsExactly("×2", "+");
    assertThat(signs.get(1).at().x()).isGreaterThan(signs.get(0).at().x());
    assertThat(signs.get(1).at().y()).isEqualTo(signs.get(0).at().y());
  }

  @Test
  void box_start_and_words_keep_inside_the_frame_and_off_each_other() {
    MapPicture picture =
        MapPicture.of(BoathousePapers.latexOnPine(Verdict.WINDOW), MapPicture.USUAL_PLOT_HEIGHT)
            .orElseThrow();

    assertThat(picture.box().orElseThrow().inside(picture.frame())).isTrue();
    assertThat(picture.tags())
        .extracting(MapPicture.Tag::text)
        .containsExactly("stay inside", "START");
    assertThat(picture.tags()).allMatch(tag -> tag.frame().inside(picture.frame()));
    assertThat(picture.tags().get(0).frame().touches(picture.tags().get(1).frame())).isFalse();
  }

  @Test
  void no_region_is_drawn_from_a_model_that_cannot_be_trusted() {
    Recommendation unreliable = BoathousePapers.latexOnPine(Verdict.UNRELIABLE);

    assertThat(MapPicture.of(unreliable, 500).orElseThrow().regions()).isEmpty();
    assertThat(MapPicture.of(unreliable, 500).orElseThrow().signs()).isNotEmpty();
  }

  @Test
  void ticks_are_round_and_at_least_four_where_round_numbers_allow() {
    assertThat(new LogAxis(4.9, 61, 0, 1000).ticks(50)).containsExactly(5.0, 10.0, 20.0, 50.0);
    assertThat(new LogAxis(31, 68, 0, 1000).ticks(10))
        .containsExactly(35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0);
    assertThat(new LogAxis(41, 44.5, 0, 1000).ticks(10)).hasSizeBetween(3, 8);
    assertThat(new LogAxis(1, 100, 0, 1000).place(10)).isCloseTo(500, Offset.offset(1e-9));
    assertThat(new LogAxis(1, 100, 800, 0).ticks(200)).doesNotContain(2.0).contains(1.0, 5.0);
  }

  private static CellState state(boolean tried, boolean keepsChar, boolean keepsClearing) {
    return CellState.of(new MapCell(40, 16, tried, true, keepsChar, keepsClearing));
  }

  private static charline.window.RigSetup bench() {
    return BoathousePapers.bench(Emission.PULSED);
  }

  private static PatchPlaces places(Settings settings) {
    return PatchPlaces.of(List.of(patch(settings, reading(1, Mark.CLEAN))), bench(), 2);
  }

  private static Settings settings(
      double percent, charline.exposure.DoseForm form, double spot, double kilohertz) {
    return new Settings(
        PowerSetting.percent(percent),
        form,
        new Spot(spot, SpotDefinition.ONE_OVER_E_SQUARED),
        Optional.of(new Pulses(kilohertz, OptionalDouble.of(120))));
  }

  private static Patch patch(Settings settings, Reading... readings) {
    return new Patch(
        ANY.id(),
        ANY.code(),
        ANY.burnedAt(),
        ANY.rig(),
        ANY.board(),
        ANY.finish(),
        settings,
        ANY.areaSquareCentimetres(),
        List.of(readings));
  }

  private static Reading reading(int passes, Mark first, Mark... rest) {
    return new Reading(
        BoathousePapers.id("r" + passes),
        passes,
        Outcome.of(first, rest),
        Optional.empty(),
        OptionalDouble.empty(),
        BoathousePapers.BURNED,
        Optional.empty(),
        Optional.empty());
  }

  private static MapPicture picture(List<Patch> patches) {
    Recommendation r = BoathousePapers.latexOnPine(Verdict.NOT_YET);
    return MapPicture.of(
            new Recommendation(
                r.stratum(),
                r.asked(),
                r.evidence(),
                r.bench(),
                r.verdict(),
                r.reasons(),
                r.nextSteps(),
                r.standing(),
                r.tried(),
                r.chanceAnyWindow(),
                r.chosen(),
                r.alternatives(),
                r.map(),
                r.medianPatchSquareCentimetres(),
                r.charFit(),
                r.clearingFit(),
                Optional.empty(),
                patches,
                OptionalDouble.empty()),
            MapPicture.USUAL_PLOT_HEIGHT)
        .orElseThrow();
  }

  private static Offset<Double> within() {
    return Offset.offset(1e-9);
  }
}
