package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rigs, power checks, boards and finishes are put right, with their history. */
class PutRightCommandsTest {
  private static final String BURN =
      "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1 --outcome"
          + " clean";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  private String shown(String command) {
    Shell.Result result = shell.run(command);
    assertThat(result.err()).isEmpty();
    return result.out();
  }

  @Test
  void a_rig_is_amended_and_the_history_says_who_when_and_why() {
    shell.mustDo(BURN);

    assertThat(
            shown(
                "rig amend Heron --rated 300W --max-pulse 5mJ --name \"Heron 254\" --why \"read off"
                    + " the plate\""))
        .isEqualTo(
            "Rig Heron 254 now reads: pulsed, 300 W, 1064 nm, spot 0.6 mm, 40 kHz, width 60\n"
                + "  mm, largest pulse 5 mJ. 1 patch is affected.\n");
    assertThat(shown("rig show \"Heron 254\""))
        .contains("  largest pulse   5 mJ\n")
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Ada: name from Heron to Heron 254 (read off the plate)
              2026-06-01 14:30 Ada: rated power from 200 W to 300 W (read off the plate)
              2026-06-01 14:30 Ada: largest pulse energy from nothing to 5 mJ (read off the
              plate)
            """);
    assertThat(shown("patch show 1")).contains("180 W on the work");
    shell.mustDo("rig amend \"Heron 254\" --max-pulse none");
    assertThat(shown("rig show \"Heron 254\"")).doesNotContain("  largest pulse   ");
  }

  @Test
  void a_renamed_rig_board_and_finish_are_found_by_their_old_names_too() {
    shell.mustDo(BURN);
    shell.mustDo("rig amend Heron --name Egret");
    shell.mustDo("board amend boathouse-1 --name \"door stile\"");
    shell.mustDo("finish amend wall-latex --name \"north wall\"");

    assertThat(shown("rig show heron")).startsWith("Rig Egret\n");
    assertThat(shown("board show boathouse-1")).startsWith("Board door stile\n");
    assertThat(shown("finish show wall-latex")).startsWith("Finish north wall\n");
    assertThat(shown("find --rig heron --board boathouse-1 --finish wall-latex"))
        .contains("P-0001", "rig Egret");
    assertThat(shown("find heron boathouse-1")).contains("P-0001");
    shell.mustDo("rig add Heron --kind pulsed --rated 500W");
    assertThat(shown("rig show heron")).startsWith("Rig Heron\n");
  }

  @Test
  void a_power_check_is_amended_and_its_patches_follow() {
    shell.mustDo("rig check Heron --metered 114W --at 2026-05-01 --sure");
    shell.mustDo(BURN);
    assertThat(shown("patch show 1")).contains("60 %, 68.4 W on the work");

    assertThat(shown("rig check amend Heron last --power 60% --why \"the dial was at 60 %\""))
        .isEqualTo(
            "The power check of rig Heron now reads: 114 W at 60 % on 2026-05-01 (95 % of\n"
                + "  the nominal power).\n");

    assertThat(shown("patch show 1")).contains("60 %, 114 W on the work");
    assertThat(shown("rig show Heron"))
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Ada: power check of 2026-05-01 at 60 %: power setting from
              100 % to 60 % (the dial was at 60 %)
            """);
  }

  @Test
  void a_power_check_is_void_for_a_reason_and_comes_back() {
    shell.mustDo("rig check Heron --metered 180W --at 2026-05-01");
    shell.mustDo("rig check Heron --metered 190W --at 2026-05-20");
    shell.mustDo(BURN);

    shell.at("2026-06-01T12:41:00Z");
    assertThat(shell.run("rig check void Heron 2026-05-20").err())
        .isEqualTo("--why: a power check is void only with a reason; give one.\n");
    shell.at("2026-06-01T12:30:00Z");
    assertThat(shown("rig check void Heron 2026-05-20 --why \"meter not warm\""))
        .isEqualTo(
            "The power check of rig Heron, 190 W at 100 % on 2026-05-20, is void: meter not\n"
                + "  warm. It stays in the log.\n");
    assertThat(shown("patch show 1")).contains("108 W on the work");
    assertThat(shown("rig show Heron"))
        .contains("void check", "because: meter not warm")
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Ada: power check of 2026-05-20 at 100 %: void from nothing to
              meter not warm (meter not warm)
            """);
    assertThat(shell.run("rig check amend Heron 2026-05-20 --metered 180W").err())
        .startsWith(
            "No power check of rig Heron is meant by \"2026-05-20\"; it has 180 W at 100 %");

    shell.mustDo("rig check amend Heron 2026-05-20 --bring-back");
    assertThat(shown("patch show 1")).contains("114 W on the work");
  }

  @Test
  void several_checks_of_a_day_are_told_apart_by_their_setting() {
    shell.mustDo("rig check Heron --power 30% --metered 48W --at \"2026-05-01 09:00\"");
    shell.mustDo("rig check Heron --metered 196W --at \"2026-05-01 09:05\"");

    assertThat(shell.run("rig check amend Heron 2026-05-01 --metered 49W").err())
        .isEqualTo(
            "More than one power check of rig Heron is meant by \"2026-05-01\"; it has 48 W at 30 %"
                + " on 2026-05-01 at 09:00, 196 W at 100 % on 2026-05-01 at 09:05. Name one as"
                + " last, 2026-06-01, \"2026-06-01 09:30\" or \"2026-06-01 60%\".\n");
    shell.mustDo("rig check amend Heron \"2026-05-01 30%\" --metered 49W");
    shell.mustDo("rig check amend Heron \"2026-05-01 09:05\" --metered 195W");
    assertThat(shown("rig show Heron")).contains("49 W at 30 %", "195 W at 100 %");
  }

  @Test
  void a_check_says_at_which_pulses_it_was_made_and_a_patch_at_others_says_so() {
    shell.mustDo("rig check Heron --metered 150W --rep 20kHz --pulse 200ns --at 2026-05-01");
    shell.mustDo(BURN);

    assertThat(shown("rig show Heron")).contains("150 W at 100 % and 20 kHz, 200 ns on 2026-05-01");
    assertThat(shown("patch show 1"))
        .contains("60 %, 90 W on the work, metered on 2026-05-01 at 20 kHz, not\n", "at 40 kHz");
  }

  @Test
  void a_void_board_takes_its_patches_along_and_brings_them_back() {
    shell.mustDo(BURN);
    shell.mustDo(BURN.replace("boathouse-1", "boathouse-2"));

    assertThat(shown("board void boathouse-1 --why \"treated with preservative\""))
        .isEqualTo(
            "Board boathouse-1 is void: treated with preservative. 1 patch counts in no\n"
                + "  analysis any more, and it stays in the log.\n");
    assertThat(shown("find pine")).contains("P-0002").doesNotContain("P-0001");
    assertThat(shown("board list")).doesNotContain("boathouse-1");
    assertThat(shown("board show boathouse-1"))
        .startsWith("Board boathouse-1 (void)\n  void because    treated with preservative\n");
    assertThat(shell.run(BURN).err())
        .startsWith(
            "Board boathouse-1 is void (treated with preservative), so patches on it count");
    assertThat(shell.run("board void boathouse-1 --why again").code()).isEqualTo(2);
    assertThat(shown("check")).contains("undamaged");

    shell.mustDo("board amend boathouse-1 --bring-back --why \"it was another one\"");
    assertThat(shown("find pine")).contains("P-0001", "P-0002");
    assertThat(shown("board show boathouse-1"))
        .contains("Ada: void from treated with preservative to nothing (it was\n  another one)");
  }

  @Test
  void a_finish_is_amended_coat_by_coat() {
    shell.mustDo("finish add door --coat varnish:dark:60um");
    shell.mustDo("finish amend door --coat alkyd:mid:80um --coat primer:pale --why \"chipped\"");
    assertThat(shown("finish show door"))
        .startsWith(
            """
            Finish door
              counted as      alkyd
              outermost coat  mid alkyd 80 um
              below it        pale primer
            """)
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Ada: coat 1: family from varnish to alkyd (chipped)
              2026-06-01 14:30 Ada: coat 1: tone from dark to mid (chipped)
              2026-06-01 14:30 Ada: coat 1: thickness from 60 µm to 80 µm (chipped)
              2026-06-01 14:30 Ada: coat 2: family from nothing to primer (chipped)
              2026-06-01 14:30 Ada: coat 2: tone from nothing to pale (chipped)
              2026-06-01 14:30 Ada: family from varnish to alkyd (chipped)
            """);
    shell.mustDo("finish amend door --coat alkyd:mid:80um --why \"no primer after all\"");
    assertThat(shown("finish show door")).doesNotContain("below it");
    shell.mustDo("finish amend door --coat alkyd:mid:80um --coat grime");
    assertThat(shown("finish show door")).contains("below it        grime\n");
  }

  @Test
  void two_records_of_one_rig_board_and_finish_are_joined() {
    shell.mustDo("rig add \"Heron two\" --kind pulsed --rated 200W --spot 0.6 --rep 40 --width 60");
    shell.mustDo("board add stile --wood pine");
    shell.mustDo("finish add \"latex two\" --coat latex:pale:90um");
    shell.mustDo("rig check \"Heron two\" --metered 180W --at 2026-05-01");
    shell.mustDo(
        "patch add --rig \"Heron two\" --board stile --finish \"latex two\" --power 60 --hand 22"
            + " --passes 1 --outcome clean");

    assertThat(shown("rig join \"Heron two\" --into Heron --why \"one laser\""))
        .isEqualTo(
            "Rig Heron two is joined into Heron: 1 patch is counted for it now. Both names\n"
                + "  find it.\n");
    shell.mustDo("board join stile --into boathouse-1");
    shell.mustDo("finish join \"latex two\" --into wall-latex");

    assertThat(shown("find \"heron two\" stile \"latex two\"")).contains("P-0001");
    assertThat(shown("find --rig Heron --board boathouse-1 --finish wall-latex"))
        .contains("P-0001");
    assertThat(shown("rig list")).doesNotContain("Heron two");
    assertThat(shown("rig show \"heron two\""))
        .startsWith("Rig Heron\n")
        .contains("power check     180 W at 100 %")
        .contains("Ada: rig Heron two: joined into Heron (one laser)");
    assertThat(shown("patch show 1"))
        .contains("rig from Heron two to Heron (one laser)")
        .contains("board from stile to boathouse-1");
    assertThat(shown("check")).contains("undamaged");
  }

  @Test
  void a_merge_offers_to_join_what_both_benches_set_up() throws IOException {
    Path slipway = Files.createDirectory(folder.resolve("slipway"));
    Shell other = new Shell(slipway).setUp();
    other.mustDo(BURN);
    Path there = slipway.resolve("boathouse.db");

    assertThat(shown("merge " + there))
        .contains(
            "Rig Heron (2) agrees with Heron; if they are one, join them: `charline rig\n"
                + "  join \"Heron (2)\" --into \"Heron\"`, or merge again with --join.\n")
        .contains("Board boathouse-1 (2) agrees with boathouse-1;")
        .contains("Finish wall-latex (2) agrees with wall-latex;");
    shell.mustDo("rig join \"Heron (2)\" --into \"Heron\"");
    assertThat(shown("merge " + there + " --join"))
        .contains("Board boathouse-1 (2) is joined into boathouse-1; both names find it.\n")
        .doesNotContain("Rig Heron (2)");
    assertThat(shown("board list")).doesNotContain("(2)");
    assertThat(shown("patch show 1")).contains("board           boathouse-1, pine");
  }

  /** What was found in the one record was found in the other: they are one finish. */
  @Test
  void sample_results_follow_a_finish_that_is_joined() {
    shell.mustDo("finish add \"latex two\" --coat latex:pale:90um");
    shell.mustDo("sample add lead found --finish \"latex two\" --on 2026-05-20");

    shell.mustDo("finish join \"latex two\" --into wall-latex");

    assertThat(shown("sample list --json")).contains("\"finish\" : \"wall-latex\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rig amend Heron --why x                    | Nothing in Heron would change; say what to amend.
          rig amend Heron --kind cw                  | A cw rig has no pulses; leave out its repetition rate and pulse duration.
          rig amend Heron --name Gull                | This log has a rig "Gull" already; choose another name.
          rig amend Heron --rated 2kW --why " "      | --why: a record is amended only with a reason; give one.
          rig amend Heron --rated 20kW               | Power of a pulsed unit of 20000 W is outside 5 to 2000 W (usual: 50 to 500); correct it, or add --sure.
          rig join Heron --into heron                | Both names find the rig Heron, so there is nothing to join.
          rig join Gull --into Heron                 | Only records of one thing can be joined, and their kind of light differs (cw and pulsed); amend the wrong one first.
          rig join Tern --into Heron                 | Rig Tern is rated at 300 W and Heron at 200 W, and Heron counts for both; amend the wrong one first, or add --sure.
          board join boathouse-1 --into sill         | Only records of one thing can be joined, and their wood differs (pine and oak); amend the wrong one first.
          finish amend wall-latex --why x            | Nothing in wall-latex would change; say what to amend.
          finish join wall-latex --into door         | Only records of one thing can be joined, and their family differs (latex and varnish); amend the wrong one first.
          rig check amend Gull last --metered 180W   | Rig Gull has no power check that counts.
          rig check Gull --metered 1400W --rep 20    | Rig Gull is cw and has no pulses; leave out the repetition rate and pulse duration of the check.
          """)
  void what_cannot_be_put_right_is_refused(String line, String sentence) {
    shell.mustDo("rig add Gull --kind cw --rated 1500W");
    shell.mustDo("rig add Tern --kind pulsed --rated 300W");
    shell.mustDo("board add sill --wood oak");
    shell.mustDo("finish add door --coat varnish");
    assertThat(shell.run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(shown("rig show Heron")).doesNotContain("Changes");
  }
}
