package charline.log;

import static charline.trial.Pieces.NOON;
import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.WoodForm;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a check of the log asks about. Usual ranges: common practice, no published source. */
class DoubtsTest {
  private static final OffsetDateTime NOW = NOON.plusDays(1);

  /** Without usual settings, from which the values of these tests would be far. */
  private static final Rig HERON = RigBuilder.like(rig(1, "Heron", 200)).bare().build();

  private static List<String> about(Rig rig, Board board, Patch patch) {
    PatchEntry entry = Boathouse.entry(patch);
    return new Doubts(NOW)
        .of(List.of(rig), List.of(board), List.of(entry)).stream().map(Finding::text).toList();
  }

  private static List<String> about(Patch patch) {
    return about(HERON, board(1, "pine"), patch);
  }

  private static Patch burned(
      PowerSetting power, double spot, double kHz, double ns, DoseForm form, Reading reading) {
    return patch(
        1,
        HERON,
        board(1, "pine"),
        finish(1, "latex"),
        new Settings(
            power,
            form,
            new Spot(spot, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(kHz, OptionalDouble.of(ns)))),
        reading);
  }

  private static Patch usual(Reading reading) {
    return burned(PowerSetting.percent(60), 0.6, 40, 100, new HandPass(60, 20), reading);
  }

  private static Reading judged(OffsetDateTime at, int passes) {
    Reading r = reading(passes, "clean");
    return new Reading(
        r.id(), passes, r.outcome(), r.soot(), r.depthMicrometres(), at, r.by(), r.note());
  }

  /** A third of the lowest usual value and three times the highest still pass. */
  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      textBlock =
          """
          200, 0.6, 40,   100,  60,  20,   1,  -
          210, 6,   300,  1500, 300, 180,  30, -
          200, 0.04, 3.4, 7,    4,   1.7,  1,  -
          211, 0.6, 40,   100,  60,  20,   1,  Power of 211 W is more than rig Heron gives (200 W at 100 %)
          200, 6.1, 40,   100,  60,  20,   1,  spot diameter of 6.1 mm
          200, 0.6, 3,    100,  60,  20,   1,  repetition rate of 3 kHz
          200, 0.6, 40,   1501, 60,  20,   1,  pulse duration of 1501 ns
          200, 0.6, 40,   100,  301, 20,   1,  scan width of 301 mm
          200, 0.6, 40,   100,  60,  1.6,  1,  hand speed of 1.6 mm/s
          200, 0.6, 40,   100,  60,  20,   31, number of passes of 31 passes
          """)
  void every_knob_of_a_patch_is_looked_at(
      double watts,
      double spot,
      double kHz,
      double ns,
      double width,
      double hand,
      int passes,
      String doubt) {
    Patch patch =
        burned(
            PowerSetting.watts(watts),
            spot,
            kHz,
            ns,
            new HandPass(width, hand),
            judged(NOW, passes));
    if (doubt == null) {
      assertThat(about(patch)).isEmpty();
    } else {
      assertThat(about(patch))
          .singleElement()
          .asString()
          .contains(doubt.startsWith("Power") ? "P-0001: " + doubt : "P-0001 has a " + doubt);
    }
  }

  @Test
  void a_scan_speed_is_looked_at_too() {
    LineScan slow = new LineScan(160, 0.1);
    assertThat(about(burned(PowerSetting.percent(60), 0.6, 40, 100, slow, judged(NOW, 1))))
        .containsExactly(
            "P-0001 has a scan speed of 160 mm/s, far from the usual 500 to 15000 mm/s; amend it if"
                + " it was mistyped.");
  }

  /** Forms of a dose: a third of the lowest usual value and three times the highest still pass. */
  @Test
  void lines_and_timed_areas_are_looked_at_knob_by_knob() {
    assertThat(aboutForm(new LineScan(5000, 0.01))).isEmpty();
    assertThat(aboutForm(new LineScan(5000, 1.5))).isEmpty();
    assertThat(aboutForm(new LineScan(5000, 1.6)))
        .containsExactly(
            "P-0001 has a line spacing of 1.6 mm, far from the usual 0.03 to 0.5 mm; amend it if it"
                + " was mistyped.");
    assertThat(aboutForm(new TimedArea(1.7, 0.34))).isEmpty();
    assertThat(aboutForm(new TimedArea(300, 180))).isEmpty();
    assertThat(aboutForm(new TimedArea(301, 4)))
        .containsExactly(
            "P-0001 has a marked area of 301 cm2, far from the usual 5 to 100 cm2; amend it if it"
                + " was mistyped.");
    assertThat(aboutForm(new TimedArea(25, 181)))
        .containsExactly(
            "P-0001 has a time per pass of 181 s, far from the usual 1 to 60 s; amend it if it was"
                + " mistyped.");
  }

  private static List<String> aboutForm(DoseForm form) {
    return about(burned(PowerSetting.percent(60), 0.6, 40, 100, form, judged(NOW, 1)));
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "600, 0", "601, 1"})
  void a_depth_beyond_any_coat_is_named(double micrometres, int doubts) {
    Reading r = judged(NOW, 1);
    Reading deep =
        new Reading(
            r.id(),
            1,
            r.outcome(),
            r.soot(),
            OptionalDouble.of(micrometres),
            NOW,
            r.by(),
            r.note());
    assertThat(about(usual(deep))).hasSize(doubts);
  }

  @ParameterizedTest
  @CsvSource({"1.7, 0", "180, 0", "1.6, 1", "181, 1"})
  void a_patch_of_an_odd_size_is_named(double squareCentimetres, int doubts) {
    Patch p = usual(judged(NOW, 1));
    Patch sized =
        new Patch(
            p.id(),
            p.code(),
            p.burnedAt(),
            p.rig(),
            p.board(),
            p.finish(),
            p.settings(),
            OptionalDouble.of(squareCentimetres),
            p.readings());
    assertThat(about(sized)).hasSize(doubts);
  }

  @Test
  void a_patch_is_judged_after_it_was_burned() {
    assertThat(about(usual(judged(NOON, 1))))
        .containsExactly(
            "P-0001 was judged (2026-06-01T12:00+02:00) before it was burned"
                + " (2026-06-01T13:00+02:00); amend the time if a clock was wrong.");
  }

  @ParameterizedTest
  @CsvSource({"139, 1", "140, 0", "240, 0", "241, 1"})
  void a_power_check_far_from_the_rating_either_way_is_named(double watts, int doubts) {
    Rig rig = rig(1, "Heron", 200, new PowerCheck(new UUID(9, 1), NOON, 100, watts));
    assertThat(about(rig, board(1, "pine"), usual(judged(NOW, 1)))).hasSize(doubts);
  }

  @Test
  void figures_of_rigs_and_boards_are_looked_at() {
    Board wet =
        new Board(
            new UUID(2, 1),
            "offcut",
            "pine",
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.of(92),
            Optional.empty());
    Rig odd =
        RigBuilder.like(HERON)
            .named("Heron")
            .ratedWatts(20_000)
            .wavelengthNanometres(1.064)
            .checks(List.of())
            .build();
    assertThat(about(odd, wet, usual(judged(NOW, 1))))
        .containsExactly(
            "Rig Heron has a wavelength of 1.064 nm, far from the usual 355 to 10600 nm; amend it"
                + " if it was mistyped.",
            "Rig Heron has a rated power of 20000 W, far from the usual 50 to 500 W; amend it if it"
                + " was mistyped.",
            "Board offcut has a moisture of 92 %, far from the usual 6 to 20 %; amend it if it was"
                + " mistyped.");
  }
}
