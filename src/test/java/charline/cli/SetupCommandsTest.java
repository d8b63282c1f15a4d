package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetupCommandsTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = new Shell(folder);
  }

  @Test
  void a_rig_is_set_up_listed_and_shown() {
    Shell.Result added =
        shell.run("rig add Heron --kind pulsed --rated 0.2kW --spot 600um --rep 40kHz --width 6cm");

    assertThat(added)
        .isEqualTo(new Shell.Result(0, "Rig Heron is set up: pulsed, 200 W, 1064 nm.\n", ""));
    assertThat(shell.run("rig list").out())
        .isEqualTo(
            """
              rig    kind    rated W    nm  spot mm  last power check
              Heron  pulsed      200  1064      0.6  none
            """);
    assertThat(shell.run("rig show heron --json").out())
        .contains("\"rated_w\" : 200,", "\"width_mm\" : 60,", "\"pulse_ns\" : null,");
  }

  @Test
  void a_power_check_changes_what_the_dial_means() {
    shell.mustDo("rig add Heron --kind pulsed --rated 200W");

    assertThat(shell.run("rig check Heron --metered 188W").out())
        .isEqualTo("Heron gave 188 W at 100 %: 94 % of its nominal power from 2026-06-01 on.\n");
    assertThat(shell.run("rig show Heron").out())
        .contains("power check     188 W at 100 % on 2026-06-01 (94 % of the nominal power)");
  }

  @Test
  void a_board_is_put_right_with_its_patches_and_the_history_says_who_and_why() {
    Shell bench = Shell.withBench(folder);
    bench.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1"
            + " --outcome clean");

    assertThat(
            bench
                .run(
                    "board amend boathouse-1 --wood oak --moisture 11% --job door --why \"planed a"
                        + " corner\"")
                .out())
        .isEqualTo(
            "Board boathouse-1 now reads: oak, solid, moisture 11 %, job door. 1 patch is\n"
                + "  affected.\n");
    assertThat(bench.run("find latex oak --job door").out()).contains("1 patch found");
    assertThat(bench.run("find pine").code()).isEqualTo(1);
    bench.mustDo("board amend boathouse-1 --name \"door stile\" --why \"labelled anew\" --by Bo");

    assertThat(bench.run("board show \"door stile\"").out())
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Ada: wood from pine to oak (planed a corner)
              2026-06-01 14:30 Ada: moisture from nothing to 11 % (planed a corner)
              2026-06-01 14:30 Ada: job from boathouse to door (planed a corner)
              2026-06-01 14:30 Bo: name from boathouse-1 to door stile (labelled anew)
            """);
    assertThat(bench.run("find \"door stile\"").out()).contains("P-0001");
    assertThat(bench.run("board show \"door stile\" --json").out())
        .contains("\"what\" : \"board.wood\"");
  }

  /** A panel is its own form: "mdf, solid" is nothing that a yard sells. */
  @ParameterizedTest
  @CsvSource({"mdf, mdf", "plywood, plywood", "hardboard, mdf", "oak, solid", "bog oak, solid"})
  void a_wood_implies_its_form(String wood, String form) {
    shell.mustDo("wood add \"bog oak\" --like oak");
    shell.mustDo("board add panel --wood \"%s\"".formatted(wood));
    assertThat(shell.run("board show panel --json").out())
        .contains("\"form\" : \"%s\"".formatted(form));
    shell.mustDo("board add faced --form veneer --wood \"%s\"".formatted(wood));
    assertThat(shell.run("board show faced --json").out()).contains("\"form\" : \"veneer\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          board amend boathouse-1 --wood pine --why again     | Nothing in boathouse-1 would change; say what to amend.
          board amend boathouse-1 --wood pin --why again      | No wood "pin" in this log; nearest: pine.
          board amend boathouse-1 --name boathouse-2 --why x  | This log has a board "boathouse-2" already; choose another name.
          board amend boathouse-9 --wood oak --why x          | No board "boathouse-9" in this log; nearest: boathouse-1, boathouse-2.
          board amend boathouse-1 --moisture 140% --why x     | Moisture must be between 0 and 100 %, not 140 %.
          board amend boathouse-1 --wood oak --why " "        | --why: a record is amended only with a reason; give one.
          """)
  void what_a_board_cannot_be_is_refused(String line, String sentence) {
    Shell bench = Shell.withBench(folder);
    assertThat(bench.run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(bench.run("board show boathouse-1").out()).doesNotContain("Changes");
  }

  @Test
  void a_metered_power_far_from_the_dial_needs_a_word_that_one_is_sure() {
    shell.mustDo("rig add Heron --kind pulsed --rated 200W");

    assertThat(shell.run("rig check Heron --power .5 --metered 94W").err())
        .isEqualTo(
            "--power: a share of 1 or less needs its % sign, as .5 can mean 50% or 0.5%; type 50%"
                + " or 0.5%.\n");
    Shell.Result doubted = shell.run("rig check Heron --power 50% --metered 18W");

    assertThat(doubted.code()).isEqualTo(2);
    assertThat(doubted.err())
        .isEqualTo(
            "18 W at 50 % is 18 % of what Heron should give; check both numbers, or add --sure.\n");
    assertThat(shell.run("rig check Heron --power 50% --metered 18W --sure").code()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rig add H --kind pulsd --rated 200W | Kind of laser must be pulsed or cw, not "pulsd".
          rig add H --kind pulsed --rated -5W | Rated power must be above 0 W, not -5 W.
          rig add H --kind pulsed --rated NaN | --rated: A power must be a number with an optional unit, such as 30W, not "NaN".
          rig add H --kind cw --rated 1kW --rep 40 | A cw rig has no pulses; leave out its repetition rate and pulse duration.
          board add B --wood oak --moisture 400% | Moisture must be between 0 and 100 %, not 400 %.
          board add B --wood oka | No wood "oka" in this log; nearest: oak.
          board add B --wood oak --form plank | A board's form must be solid, veneer, plywood or mdf, not "plank".
          finish add F --coat latx | No coating family "latx" in this log; nearest: latex.
          finish add F --coat latex:blue | A tone must be pale, mid or dark, not "blue".
          finish add F --coat latex:pale:90um:x | A coat must read FAMILY:TONE:THICKNESS, such as latex:pale:90um, not "latex:pale:90um:x".
          """)
  void what_cannot_be_is_refused_in_one_sentence(String line, String sentence) {
    Shell.Result refused = shell.run(line);

    assertThat(refused).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(shell.run("rig list").out()).doesNotContain("H ");
  }

  @Test
  void a_likely_slip_is_taken_only_with_a_word_that_one_is_sure() {
    String line = "rig add Heron --kind pulsed --rated 200W --spot 60mm";

    assertThat(shell.run(line).err())
        .isEqualTo(
            "Spot diameter of 60 mm is outside 0.02 to 20 mm (usual: 0.1 to 2); correct it, or add"
                + " --sure.\n");
    assertThat(shell.run(line + " --sure").code()).isZero();
  }

  @Test
  void a_name_that_is_taken_is_refused() {
    shell.mustDo("board add wall --wood pine");

    Shell.Result again = shell.run("board add wall --wood oak");

    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("wall").hasLineCount(1);
  }

  @Test
  void a_coat_may_leave_out_its_tone() {
    assertThat(shell.run("finish add trim --coat alkyd:3.5mil --coat primer").out())
        .startsWith(
            "Finish trim is set up: alkyd 88.9 um over primer, counted as alkyd.\n"
                + "BEFORE THE BEAM: lead: not tested.\nCaution, lead: ");
  }

  @Test
  void lists_come_as_csv_too() {
    shell.mustDo("board add \"wall, north\" --wood pine --moisture 9%");

    assertThat(shell.run("board list --csv").out())
        .isEqualTo(
            """
            board,wood,form,condition,moisture_pct,job
            "wall, north",pine,solid,,9,
            """);
    assertThat(shell.run("board list --csv --json").err())
        .isEqualTo("Give --json or --csv, not both.\n");
  }

  @Test
  void an_empty_list_answers_no() {
    shell.mustDo("rig add Heron --kind pulsed --rated 200W");

    assertThat(shell.run("board list"))
        .isEqualTo(
            new Shell.Result(
                1, "No board is set up yet; `charline board add --help` shows how.\n", ""));
  }

  @Test
  void reading_a_log_that_is_not_there_leaves_none_behind() {
    Shell.Result result = shell.run("--log " + folder.resolve("typo.db") + " rig list");

    assertThat(result.code()).isEqualTo(3);
    assertThat(result.err()).startsWith("There is no log at ").contains("--log");
    assertThat(Files.exists(folder.resolve("typo.db"))).isFalse();
  }

  @Test
  void the_log_may_be_named_before_or_after_the_command() {
    Path other = folder.resolve("other/annex.db");
    shell.mustDo("--log " + other + " rig add Otter --kind cw --rated 1.5kW");

    assertThat(shell.run("rig list --log " + other).out()).contains("Otter  cw");
  }
}
