package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Photo;
import charline.record.Patches;
import charline.refusal.Refusal;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PatchCommandsTest {
  private static final String FIRST =
      "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
          + " --outcome residue";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  @Test
  void recording_a_patch_gives_its_code_its_dose_and_the_first_caution() {
    Shell.Result result = shell.run(FIRST);

    assertThat(result.code()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .startsWith(
            """
              +----------+
              |  P-0001  |  on boathouse-1, latex over pine
              +----------+
            P-0001 recorded: 60 %, hand 22 mm/s, 1 pass: 9.09 J/cm2 per pass, 1.06 J/cm2
              fluence; residue.
            Caution, older coats:\
            """);
  }

  @Test
  void the_next_patch_takes_three_words() {
    shell.mustDo(FIRST);

    assertThat(shell.run("patch add --like last --hand 18 --outcome clean").out())
        .isEqualTo(
            """
              +----------+
              |  P-0002  |  on boathouse-1, latex over pine
              +----------+
            P-0002 recorded: 60 %, hand 18 mm/s, 1 pass: 11.1 J/cm2 per pass, 1.06 J/cm2
              fluence; clean.
            """);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-05-31 9:10, 2026-05-31 09:10",
    "2026-05-31 09:10, 2026-05-31 09:10",
    "2026-05-31  9:10:30, 2026-05-31 09:10",
    "2026-05-31T9:10+01:00, 2026-05-31 09:10",
    "9:10, 2026-06-01 09:10",
    "9:10:30, 2026-06-01 09:10",
    "yesterday, 2026-05-31 12:00"
  })
  void an_hour_may_have_one_digit(String typed, String burned) {
    shell.mustDo(FIRST + " --at \"" + typed + "\"");

    assertThat(shell.run("patch show 1").out()).contains("burned          " + burned + " by Ada");
  }

  /**
   * The geometry of an area scan: 200 W, 20 kHz, 100 ns, 0.5 mm at 5000 mm/s and 0.1 mm. Energy and
   * fluence by ISO 11145, overlaps and pulses per point by plain geometry, the top of a Gaussian
   * pulse is 0.939437 E / FWHM.
   */
  @Test
  void a_patch_is_shown_with_what_one_pass_does_at_a_point() {
    shell.mustDo(
        "rig add Scanner --kind pulsed --rated 200W --spot 0.5mm --rep 20kHz --pulse 100ns");
    shell.mustDo(
        "patch add --rig Scanner --board boathouse-1 --finish wall-latex --power 100% --scan 5000"
            + " --spacing 0.1 --passes 1 --outcome clean");

    assertThat(shell.run("patch show 1").out())
        .contains(
            """
              each pulse      10 mJ, 93.9 kW at its top, 10.2 J/cm2 at its centre
              on a point      7.85 pulses in one pass
              overlap         50 % between pulses, 0.25 mm apart; 80 % between lines
              covers          300 cm2/min in one pass
            """);
    assertThat(shell.run("patch show 1 --json").out())
        .contains("\"pulse_energy_mj\" : 10,", "\"pulse_peak_kw\" : 93.9437279,")
        .contains("\"pulses_per_point\" : 7.85398163,", "\"pulse_pitch_mm\" : 0.25,")
        .contains("\"pulse_overlap_pct\" : 50,", "\"line_overlap_pct\" : 80,");
  }

  /**
   * 1500 W in a 1.2 mm spot: 4P / (π d²) is 132,629 W/cm² on average and twice that at its centre.
   */
  @Test
  void a_continuous_pass_is_shown_with_its_centre_its_dwell_and_its_gaps() {
    shell.mustDo("rig add Ram --kind cw --rated 1500W --spot 1.2mm");
    shell.mustDo(
        "patch add --rig Ram --board boathouse-1 --finish wall-latex --power 100% --scan 20000"
            + " --spacing 1.5 --passes 1 --outcome residue --sure");

    assertThat(shell.run("patch show 1").out())
        .contains("132629 W/cm2 irradiance")
        .contains(
            """
              at its centre   265258 W/cm2 irradiance
              dwells          0.06 ms on a point, each line
              overlap         none (gaps of 25 % of the spot) between lines
              covers          18000 cm2/min in one pass
            """)
        .doesNotContain("pulse");
  }

  @Test
  void what_was_seen_is_never_copied() {
    shell.mustDo(FIRST + " --soot yes --depth 40um --note \"smelled of wax\"");
    shell.mustDo("patch add --like 1 --outcome clean");

    assertThat(shell.run("patch show 2 --json").out())
        .contains("\"soot\" : null", "\"depth_um\" : null", "\"note\" : null")
        .contains("\"hand\" : \"22mm/s\"", "\"power\" : \"60%\"");
    assertThat(shell.run("patch add --like last").err())
        .isEqualTo(
            "The outcome is missing: give --outcome clean, or tint, char and residue joined by"
                + " +.\n");
  }

  @Test
  void a_given_dose_form_replaces_the_copied_one() {
    shell.mustDo(FIRST);
    shell.mustDo("patch add --like last --area 25cm2 --seconds 4s --outcome clean");

    assertThat(shell.run("patch show last").out())
        .contains("speed           25 cm2 in 4 s", "typed as        area 25cm2, power 60%, seconds")
        .doesNotContain("hand");
  }

  @Test
  void units_are_converted_and_kept_as_typed() {
    shell.mustDo(FIRST.replace("22mm/s", "1.2in/s"));

    assertThat(shell.run("patch show 1").out())
        .contains("hand 30.48 mm/s, width 60 mm", "typed as        hand 1.2in/s, power 60%");
  }

  @Test
  void a_mil_is_a_thousandth_of_an_inch_for_every_length() {
    shell.mustDo(FIRST + " --spot 20mil --width 2000mil --depth 2mil");
    assertThat(shell.run("patch show 1 --json").out())
        .contains("\"spot_mm\" : 0.508", "\"width_mm\" : 50.8", "\"depth_um\" : 50.8");

    shell.mustDo("patch add --like 1 --scan 5000 --spacing 10mil --outcome clean");
    assertThat(shell.run("patch show 2 --json").out()).contains("\"spacing_mm\" : 0.254");
  }

  @Test
  void power_counts_as_metered() {
    shell.mustDo("rig check Heron --metered 180W --at 2026-05-01");
    shell.mustDo(FIRST);

    assertThat(shell.run("patch show 1").out())
        .contains("60 %, 108 W on the work, metered on 2026-05-01", "8.18 J/cm2 per pass");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --hand -5 --outcome clean | Hand speed must be above 0 mm/s, not -5 mm/s.
          --hand NaN --outcome clean | --hand: A speed must be a number with an optional unit, such as 30mm/s, not "NaN".
          --hand 22kg --outcome clean | --hand: A speed must be in cm/s, in/s, m/min, m/s, mm/s, not "22kg".
          --hand 1,200 --outcome clean | --hand: A speed of 1,200 can be read in two ways; write it without a comma, as 1200 or 1.2.
          --area 1,200 --seconds 4 --outcome clean | --area: An area of 1,200 can be read in two ways; write it without a comma, as 1200 or 1.2.
          --patch-area 1,200cm2 --outcome clean | --patch-area: An area of 1,200cm2 can be read in two ways; write it without a comma, as 1200cm2 or 1.2cm2.
          --power 1,200W --outcome clean | --power: A power of 1,200W can be read in two ways; write it without a comma, as 1200W or 1.2W.
          --hand 1e400 --outcome clean | --hand: A speed of 1e400 is too large; correct it.
          --hand 9000 --outcome clean | Hand speed of 9000 mm/s is outside 0.5 to 500 mm/s (usual: 5 to 60); correct it, or add --sure.
          --hand 9000 --spot 60 --outcome clean | Spot diameter of 60 mm is outside 0.02 to 20 mm (usual: 0.1 to 2); correct it, or add --sure. Hand speed of 9000 mm/s is outside 0.5 to 500 mm/s (usual: 5 to 60); correct it, or add --sure.
          --hand 22 --scan 5000 --outcome clean | The dose must be given in one form: --hand with --width, --scan with --spacing, or --area with --seconds; --hand and --scan are of different forms.
          --power 0.6 --outcome clean | --power: a share of 1 or less needs its % sign, as 0.6 can mean 60% or 0.6%; type 60% or 0.6%.
          --power 20hp --outcome clean | --power: the power must be a number in %, W or kW, such as 60% or 120W, not "20hp".
          --power 20hw --outcome clean | --power: the power must be a number in %, W or kW, such as 60% or 120W, not "20hw".
          --power high --outcome clean | --power: the power must be a number in %, W or kW, such as 60% or 120W, not "high".
          --power low --outcome clean | --power: the power must be a number in %, W or kW, such as 60% or 120W, not "low".
          --power 140% --outcome clean | Power must be between 0 and 100 %, not 140 %.
          --power 900W --outcome clean | Power of 900 W is more than rig Heron gives (200 W at 100 %); correct it, or add --sure.
          --outcome clean+char | Clean must be the only mark of an outcome; it came with char.
          --outcome chra | An outcome is clean, or tint, char and residue joined by +, not "chra".
          --outcome clean --passes 0 | --passes: passes must be a whole number, 1 or more, not "0".
          --outcome clean --passes 1.5 | --passes: passes must be a whole number, 1 or more, not "1.5".
          --outcome clean --soot maybe | --soot: the answer must be yes or no, not "maybe".
          --outcome clean --at 2026-07-01 | --at: the time must not be in the future, and 2026-07-01 is; it is 2026-06-01 14:30 now.
          --outcome clean --at noonish | --at: a time must read like 14:30, yesterday, 2026-06-01 or "2026-06-01 14:30", not "noonish".
          --outcome clean --at 2026-6-31           | --at: "2026-6-31" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03.
          --outcome clean --at 2026-02-30 | --at: "2026-02-30" is not a valid date and time; write a time like 14:30, yesterday, 2026-06-01 or "2026-06-01 14:30".
          --outcome clean --at 24:30 | --at: "24:30" is not a valid date and time; write a time like 14:30, yesterday, 2026-06-01 or "2026-06-01 14:30".
          --outcome clean --at "2026-05-31 9:60" | --at: "2026-05-31 9:60" is not a valid date and time; write a time like 14:30, yesterday, 2026-06-01 or "2026-06-01 14:30".
          --outcome clean --scan 5000 | --spacing is not set; give it in mm.
          --outcome clean --board boathose-1 | No board "boathose-1" in this log; nearest: boathouse-1.
          """)
  void what_cannot_be_is_refused_and_nothing_is_written(String options, String sentence) {
    shell.mustDo(FIRST);

    Shell.Result refused = shell.run("patch add --like last " + options);

    assertThat(refused).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(shell.run("patch show last").out()).startsWith("Patch P-0001");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          patch add | The board is missing: give --board, or copy a patch with --like last.
          patch add --board boathouse-1 | The finish is missing: give --finish, or copy a patch with --like last.
          patch add --board boathouse-1 --finish wall-latex | The power is missing: give --power 60% or --power 120W.
          patch add --board boathouse-1 --finish wall-latex --power 60 | The speed is missing: give --hand with --width, --scan with --spacing, or --area with --seconds, or copy a patch with --like last.
          patch add --board boathouse-1 --finish wall-latex --power 60 --hand 20 | The number of passes is missing: give --passes, counting all passes made so far.
          """)
  void a_script_is_told_what_is_missing(String line, String sentence) {
    assertThat(shell.run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
  }

  @Test
  void two_powers_are_one_too_many() {
    assertThat(shell.run("patch add --power 60% --power 120W").err())
        .isEqualTo("--power was given twice; give it once. See `charline patch add --help`.\n");
  }

  @Test
  void a_further_reading_adds_up_the_dose() {
    shell.mustDo(FIRST);

    assertThat(shell.run("patch read 1 --passes 3 --outcome char --depth 80um").out())
        .isEqualTo("P-0001 after 3 passes, 27.3 J/cm2 in all: char.\n");
    assertThat(shell.run("patch show 1").out())
        .contains("     3  char             27.3  -           80");
  }

  @Test
  void passes_must_rise_and_char_stays_char_unless_a_note_says_why() {
    shell.mustDo(FIRST);
    shell.mustDo("patch read 1 --passes 3 --outcome char");

    assertThat(shell.run("patch read 1 --passes 2 --outcome char").err())
        .isEqualTo(
            "Passes on P-0001 must rise: the last reading was after 3, this one says 2; amend the"
                + " earlier reading if it was wrong.\n");
    assertThat(shell.run("patch read 1 --passes 4 --outcome clean").err())
        .isEqualTo(
            "Char on P-0001 after 3 passes cannot be gone after 4 without a note; say in a note"
                + " what happened, or amend the earlier reading.\n");
    assertThat(shell.run("patch read 1 --passes 4 --outcome clean --note \"sanded\"").code())
        .isZero();
  }

  @Test
  void one_pass_is_a_pass() {
    shell.mustDo(FIRST.replace("residue", "char"));

    assertThat(shell.run("patch read 1 --passes 2 --outcome clean").err())
        .startsWith("Char on P-0001 after 1 pass cannot be gone after 2 without a note; ");
  }

  @Test
  void an_amendment_keeps_the_old_value_and_the_reason() {
    shell.mustDo(FIRST);

    assertThat(shell.run("patch amend 1 --hand 20mm/s --why \"misread the dial\"").out())
        .isEqualTo(
            """
            P-0001 now reads: 60 %, hand 20 mm/s: 10 J/cm2 per pass, 1.06 J/cm2 fluence;
              residue after 1 pass.
            """);
    assertThat(shell.run("patch show 1").out())
        .contains("Ada: hand speed from 22 mm/s to 20 mm/s (misread the dial)");
    assertThat(shell.run("patch amend 1 --hand 20mm/s --why again").err())
        .isEqualTo("Nothing in P-0001 would change; say what to amend.\n");
  }

  @Test
  void a_reading_is_amended_by_its_passes() {
    shell.mustDo(FIRST);
    shell.mustDo("patch read 1 --passes 2 --outcome clean");

    assertThat(shell.run("patch amend 1 --outcome char --why daylight").err())
        .isEqualTo(
            "P-0001 has readings after 1, 2 passes; say with --reading which one to amend.\n");
    assertThat(shell.run("patch amend 1 --reading 2 --outcome char --why daylight").out())
        .contains("residue after 1 pass, char after 2 passes.");
  }

  @Test
  void a_reading_that_is_not_there_is_refused_with_those_that_are() {
    shell.mustDo(FIRST);

    assertThat(shell.run("patch amend 1 --reading 2 --outcome char --why daylight").err())
        .isEqualTo("P-0001 has a reading after 1 pass and none after 2; give --reading 1.\n");
    shell.mustDo("patch read 1 --passes 3 --outcome clean");
    assertThat(shell.run("patch amend 1 --reading 2 --outcome char --why daylight").err())
        .isEqualTo(
            "P-0001 has readings after 1, 3 passes; say with --reading which one to amend.\n");
  }

  @Test
  void a_void_patch_stays_and_counts_no_more() {
    shell.mustDo(FIRST);

    assertThat(shell.run("patch void 1 --why \"wrong board\"").out())
        .isEqualTo("P-0001 is void: wrong board. It counts in no analysis and stays in the log.\n");
    assertThat(shell.run("patch show 1").out())
        .startsWith("Patch P-0001 (void)\n  void because    wrong board\n");
    assertThat(shell.run("find").code()).isEqualTo(1);
  }

  @Test
  void last_said_twice_takes_out_one_patch_and_a_void_one_can_be_brought_back() {
    shell.mustDo(FIRST);
    shell.mustDo(FIRST);
    shell.mustDo("patch void last --why \"wrong board\"");

    Shell.Result again = shell.run("patch void last --why \"wrong board\"");
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).startsWith("P-0002 is void already");
    assertThat(shell.run("patch show 1").out()).startsWith("Patch P-0001\n");

    assertThat(shell.run("patch amend 2 --hand 20mm/s --why misread").out())
        .endsWith(" It is still void.\n");
    assertThat(shell.run("patch amend last --bring-back --why \"it was the right board\"").out())
        .endsWith("It counts again.\n");
    assertThat(shell.run("patch show 2").out()).startsWith("Patch P-0002\n");
    assertThat(shell.run("patch amend 2 --bring-back --why again").err())
        .isEqualTo("P-0002 is not void, so it counts already.\n");
  }

  @Test
  void a_patch_is_not_judged_on_a_day_before_it_was_burned() {
    shell.mustDo(FIRST + " --at 2026-05-04");

    assertThat(shell.run("patch read 1 --passes 2 --outcome clean --at 2026-05-03").err())
        .isEqualTo(
            "--at: a patch must be judged after it was burned, and P-0001 was burned on 2026-05-04;"
                + " correct the day.\n");
    assertThat(shell.run("patch read 1 --passes 2 --outcome clean --at 2026-05-04").code())
        .isZero();
  }

  @Test
  void a_patch_is_not_judged_at_an_hour_before_it_was_burned() {
    shell.mustDo(FIRST + " --at \"2026-05-04 09:30:20\"");

    assertThat(shell.run("patch read 1 --passes 2 --outcome clean --at \"2026-05-04 9:20\"").err())
        .isEqualTo(
            "--at: a patch must be judged after it was burned, and P-0001 was burned on 2026-05-04"
                + " 09:30; correct the time.\n");
    shell.mustDo("patch read 1 --passes 2 --outcome clean --at \"2026-05-04 9:30\"");
    shell.mustDo("patch read 1 --passes 3 --outcome clean --at \"2026-05-04T8:31+01:00\"");
    assertThat(shell.run("check").out()).contains("nothing looks mistyped");
  }

  /** The rule belongs to recording, so that no face is without it. */
  @Test
  void a_reading_from_before_the_burning_is_refused_whoever_records_it() {
    shell.mustDo(FIRST + " --at 2026-05-04");
    try (Logbook log = Logbook.openExisting(folder.resolve("boathouse.db"), Clock.systemUTC())) {
      Patches patches = new Patches(log, doubts -> {});
      Patch patch = log.patch("P-0001").patch();
      Reading early =
          new Reading(
              log.newId(),
              2,
              Outcome.parse("clean"),
              Optional.empty(),
              OptionalDouble.empty(),
              patch.burnedAt().minusDays(1),
              Optional.of("Bo"),
              Optional.empty());

      assertThatThrownBy(() -> patches.read(patch, early))
          .isInstanceOf(Refusal.class)
          .hasMessage(
              "A patch must be judged after it was burned, and P-0001 was burned on 2026-05-04;"
                  + " correct the day.");
      PatchEntry old = log.patch("P-0001");
      PatchEntry amended = old.with(patch.withReadings(List.of(patch.lastReading(), early)));
      assertThatThrownBy(() -> patches.amend(old, amended, "Bo", "forgotten"))
          .hasMessageStartingWith("A patch must be judged after it was burned");
    }
  }

  /** Otherwise a check names what nobody can put right. */
  @Test
  void what_was_judged_on_burning_follows_the_burning_and_later_readings_must_stay_later() {
    shell.mustDo(FIRST + " --at \"2026-05-04 09:30\"");
    shell.mustDo("patch read 1 --passes 2 --outcome clean --at \"2026-05-04 10:00\"");

    assertThat(shell.run("patch amend 1 --at \"2026-05-05 09:30\" --why \"wrong day\"").err())
        .isEqualTo(
            "--at: P-0001 was judged after 2 passes on 2026-05-04 10:00, which is before 2026-05-05"
                + " 09:30; put that reading right first with --reading 2 --at.\n");
    assertThat(
            shell
                .run("patch amend 1 --reading 2 --at \"2026-05-04 09:00\" --why \"wrong day\"")
                .err())
        .startsWith("--at: a patch must be judged after it was burned");
    shell.mustDo("patch amend 1 --reading 2 --at \"2026-05-05 10:00\" --why \"wrong day\"");
    shell.mustDo("patch amend 1 --at \"2026-05-05 09:30\" --why \"wrong day\"");

    assertThat(shell.run("patch show 1 --json").out())
        .contains(
            "\"burned_at\" : \"2026-05-05T09:30+02:00\"",
            "\"read_at\" : \"2026-05-05T09:30+02:00\"",
            "\"read_at\" : \"2026-05-05T10:00+02:00\"");
    assertThat(shell.run("check").out()).contains("nothing looks mistyped");
  }

  @Test
  void who_burned_and_who_judged_can_be_put_right_and_are_shown() {
    shell.mustDo(FIRST + " --at \"2026-05-04 09:30\"");
    shell.mustDo("patch read 1 --passes 2 --outcome tint --at 2026-05-04");
    shell.mustDo("patch read 1 --passes 3 --outcome clean --at 2026-05-06");
    assertThat(shell.run("patch show 1").out())
        .contains(
            "  judged          2026-05-04 by Ada after 1, 2 passes; 2026-05-06 by Ada after 3\n"
                + "                  passes\n");

    shell.mustDo("patch amend 1 --burned-by Bo --why \"was recorded for Bo\"");
    shell.mustDo("patch amend 1 --reading 3 --judged-by Cy --why \"was recorded for Cy\"");
    assertThat(shell.run("patch show 1").out())
        .contains(
            "2026-05-04 09:30 by Bo\n",
            "2026-05-04 by Bo after 1 pass; 2026-05-04 by Ada after 2\n",
            "2026-05-06 by Cy after 3 passes\n",
            "Ada: who burned it from Ada to Bo (was recorded for Bo)\n",
            "Ada: who judged it from Ada to Cy (was recorded for Cy)\n");
    assertThat(shell.run("patch amend 1 --judged-by Cy --why x").err())
        .isEqualTo(
            "P-0001 has readings after 1, 2, 3 passes; say with --reading which one to amend.\n");
    assertThat(shell.run("find by Cy").code()).isZero();
  }

  @Test
  void photos_of_a_patch_are_named() {
    shell.mustDo(FIRST);
    try (Logbook log = Logbook.openExisting(folder.resolve("boathouse.db"), Clock.systemUTC())) {
      log.addPhoto(
          "P-0001",
          new Photo(
              log.newId(),
              "sill.jpg",
              "image/jpeg",
              new byte[] {1},
              OffsetDateTime.parse("2026-06-01T15:10:00+02:00"),
              Optional.of("in low side light")),
          "Bo");
    }
    assertThat(shell.run("patch show 1").out())
        .contains("  photo           2026-06-01 15:10, sill.jpg, in low side light\n");
    assertThat(shell.run("patch show 1 --json").out()).contains("\"file_name\" : \"sill.jpg\"");
  }

  @Test
  void a_patch_that_was_burned_and_judged_in_one_go_says_so_once() {
    shell.mustDo(FIRST);
    assertThat(shell.run("patch show 1").out()).doesNotContain("judged");
  }

  /** In the night to 29 March 2026 clocks in Berlin went from 02:00 to 03:00. */
  @Test
  void an_hour_that_clocks_left_out_is_refused_and_of_one_shown_twice_the_offset_is_asked() {
    assertThat(shell.run(FIRST + " --at \"2026-03-29 02:30\"").err())
        .isEqualTo(
            "--at: clocks were put forward from 02:00 to 03:00 on 2026-03-29, so there was no"
                + " 02:30; give the time that the clock showed.\n");
    assertThat(shell.at("2026-03-29T08:00:00Z").run(FIRST + " --at 2:30").code()).isEqualTo(2);
    assertThat(shell.run(FIRST + " --at \"2025-10-26 02:30\"").err())
        .isEqualTo(
            "--at: clocks were put back from 03:00 to 02:00 on 2025-10-26, so 02:30 came twice; give"
                + " 2025-10-26T02:30+02:00 or 2025-10-26T02:30+01:00.\n");
    shell.mustDo(FIRST + " --at 2025-10-26T02:30+02:00");
    shell.mustDo(FIRST + " --at \"2026-03-29T02:30+01:00\"");
    assertThat(shell.run("find --json").out())
        .contains("\"2025-10-26T02:30+02:00\"", "\"2026-03-29T02:30+01:00\"");
  }

  @Test
  void several_patches_are_void_together_or_not_at_all() {
    shell.mustDo(FIRST);
    shell.mustDo(FIRST);
    shell.mustDo(FIRST);

    assertThat(shell.run("patch void 1 9 --why \"dirty window\"").code()).isEqualTo(2);
    assertThat(shell.run("find").code()).isZero();
    assertThat(shell.run("patch void 1 P-0002 p1 --why \"dirty window\"").out())
        .isEqualTo(
            "P-0001, P-0002 are void: dirty window. They count in no analysis and stay in\n"
                + "  the log.\n");
    assertThat(shell.run("patch void 3 2 --why \"dirty window\"").err())
        .startsWith("P-0002 is void already");
    assertThat(shell.run("find").out()).contains("1 patch found");
    shell.mustDo("patch void 3 --why \"dirty window\"");
    assertThat(shell.run("find").out())
        .isEqualTo(
            "The log has only void patches; `charline patch show CODE` shows one of them.\n");
  }

  @Test
  void a_share_of_another_rigs_power_is_not_copied() {
    shell.mustDo(FIRST);
    shell.mustDo("rig add Otter --kind pulsed --rated 300W --spot 1mm --rep 25kHz --width 60mm");

    assertThat(shell.run("patch add --like last --rig Otter --outcome clean").err())
        .isEqualTo("The power is missing: give --power 60% or --power 120W.\n");
    shell.mustDo("patch add --like last --rig Otter --power 40% --outcome clean");
    assertThat(shell.run("patch show last").out()).contains("1 mm (1/e2)", "25 kHz");
  }

  @Test
  void another_rigs_usual_width_is_not_copied() {
    shell.mustDo(FIRST);
    shell.mustDo("rig add Otter --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 30mm");

    shell.mustDo("patch add --like 1 --rig Otter --power 60% --outcome clean");
    assertThat(shell.run("patch show last").out()).contains("hand 22 mm/s, width 30 mm");
    shell.mustDo("patch amend 1 --rig Otter --why \"the other rig\"");
    assertThat(shell.run("patch show 1").out()).contains("hand 22 mm/s, width 30 mm");

    shell.mustDo(FIRST + " --rig Heron --width 50mm");
    shell.mustDo("patch add --like last --rig Otter --power 60% --outcome clean");
    assertThat(shell.run("patch show last").out())
        .contains("hand 22 mm/s, width 50 mm", "width 50mm");
  }

  @Test
  void where_the_other_rig_has_no_usual_width_it_is_asked_for() {
    shell.mustDo(FIRST);
    shell.mustDo("rig add Tern --kind pulsed --rated 200W --rep 40kHz");
    String other = "patch add --like 1 --rig Tern --power 60% --outcome clean --passes 1";

    assertThat(shell.run(other).err())
        .isEqualTo(
            "The scan width is missing: that of P-0001 belongs to rig Heron, and rig Tern has no"
                + " usual one; give --width.\n");
    assertThat(shell.run(other + " --width 40mm").err())
        .isEqualTo(
            "The spot is missing: that of P-0001 belongs to rig Heron, and rig Tern has no usual"
                + " one; give --spot.\n");
    assertThat(shell.run("patch amend 1 --rig Tern --spot 0.6mm --why slip").err())
        .isEqualTo(
            "The scan width is missing: that of P-0001 belongs to rig Heron, and rig Tern has no"
                + " usual one; give --width.\n");

    Shell.Person person = new Shell.Person("40mm");
    assertThat(shell.asking(person, other + " --spot 0.6mm").err()).isEmpty();
    assertThat(person.questions()).containsExactly("Scan width, in mm");
    assertThat(shell.run("patch show last").out()).contains("width 40 mm", "width 40mm");
  }

  @Test
  void continuous_wave_on_wood_is_cautioned_every_time() {
    shell.mustDo("rig add Otter --kind cw --rated 1kW --spot 0.8mm");
    shell.mustDo(
        "patch add --rig Otter --board boathouse-1 --finish wall-latex --power 50% --scan 8000"
            + " --spacing 0.25 --passes 1 --outcome char");

    assertThat(shell.run("patch add --like last --outcome char").out())
        .contains("W/cm2", "irradiance; char.", "Caution, continuous wave: ");
  }

  @Test
  void a_note_may_look_like_anything() {
    shell.mustDo(FIRST + " --note \"@boathouse -5 degrees, 60% humid, $HOME\"");

    assertThat(shell.run("patch show 1").out())
        .contains("note            @boathouse -5 degrees, 60% humid, $HOME\n");
  }

  @Test
  void an_unknown_code_is_refused() {
    assertThat(shell.run("patch show 7").code()).isEqualTo(2);
    assertThat(shell.run("patch add --like last --outcome clean").err())
        .isEqualTo("There is no last patch: the log has no patches yet.\n");
  }

  @Test
  void who_burned_it_comes_from_the_command_the_shell_or_the_login() {
    shell.mustDo(FIRST + " --by Bea");
    shell.mustDo("patch add --like last --outcome clean");
    shell.unset("CHARLINE_BY").mustDo("patch add --like 2 --outcome clean");

    assertThat(shell.run("patch show 1").out()).contains("burned          2026-06-01 14:30 by Bea");
    assertThat(shell.run("patch show 2").out()).contains("by Ada");
    assertThat(shell.run("patch show 3").out()).contains("by " + System.getProperty("user.name"));
  }

  @ParameterizedTest
  @CsvSource({
    "charred, char",
    "Burnt, char",
    "burned+residue, residue+char",
    "cleaned, clean",
    "tinted charred, tint+char"
  })
  void an_outcome_may_be_said_as_it_is_asked_for(String typed, String outcome) {
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1"
            + " --outcome \"%s\"".formatted(typed));

    assertThat(Set.of(outcome.split("\\+")))
        .isEqualTo(
            Set.of(
                shell
                    .run("patch show P-0001 --json")
                    .out()
                    .replaceAll("(?s).*\"outcome\" : \"([^\"]*)\".*", "$1")
                    .split("\\+")));
  }

  @ParameterizedTest
  @CsvSource({
    "failed, '\"failed\" does not say what was seen; say clean, or tint, char and residue joined by"
        + " +.'",
    "brown, 'An outcome is clean, or tint, char and residue joined by +, not \"brown\".'"
  })
  void an_outcome_that_may_mean_two_things_is_refused_with_the_offer(String typed, String says) {
    assertThat(
            shell.run(
                "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1"
                    + " --outcome "
                    + typed))
        .isEqualTo(new Shell.Result(2, "", says + "\n"));
  }

  /** What find understands, a record understands. */
  @ParameterizedTest
  @CsvSource({
    "4 may, 2026-05-04T12:00+02:00",
    "may 4, 2026-05-04T12:00+02:00",
    "4th of may 2026, 2026-05-04T12:00+02:00",
    "2026-5-4, 2026-05-04T12:00+02:00",
    "4 may 9:30, 2026-05-04T09:30+02:00",
    "yesterday 14:05, 2026-05-31T14:05+02:00"
  })
  void a_time_may_be_typed_as_find_takes_it(String typed, String moment) {
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1"
            + " --outcome clean --at \"%s\"".formatted(typed));

    assertThat(shell.run("patch show P-0001 --json").out())
        .contains("\"burned_at\" : \"%s\"".formatted(moment));
    assertThat(shell.run("find --since \"1 may\" --until \"last month\"").code()).isZero();
    assertThat(shell.run("find --until \"3 may\"").code()).isEqualTo(1);
  }

  @Test
  void a_time_that_is_many_days_or_may_be_read_two_ways_is_refused() {
    String line =
        "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1"
            + " --outcome clean --at ";

    assertThat(shell.run(line + "\"last week\"").err())
        .isEqualTo("--at: \"last week\" is several days; name one, such as 2026-05-25.\n");
    assertThat(shell.run(line + "5/4/2026").err())
        .contains("A date in figures must begin with the year");
  }
}
