package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeepingCommandsTest {
  private static final String BURN =
      "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
          + " --outcome ";

  @TempDir Path folder;
  private Shell shell;
  private Path slipway;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder).mustDo(BURN + "clean");
    slipway = folder.resolve("slipway.db");
  }

  /** A second bench that goes on from a copy of the log. */
  private Shell atTheSlipway() throws IOException {
    shell.mustDo("backup " + slipway);
    return new Shell(folder).set("CHARLINE_LOG", slipway.toString()).set("CHARLINE_BY", "Bo");
  }

  private Shell.Result merge(String options) {
    return shell.run("merge " + slipway + options);
  }

  /** Without the fold that a long folder name brings. */
  private static String unfolded(String text) {
    return text.replace("\n  ", " ");
  }

  @Test
  void a_backup_is_a_whole_log_that_says_what_it_holds() {
    Shell.Result backup = shell.run("backup " + slipway);
    assertThat(backup.code()).isZero();
    assertThat(unfolded(backup.out())).isEqualTo(slipway + " contains 1 patch with 1 reading.\n");
    assertThat(shell.run("--log " + slipway + " find").out()).contains("1 patch found: 1 reading");
    assertThat(shell.run("backup " + slipway))
        .isEqualTo(
            new Shell.Result(
                2, "", slipway + " already exists; choose a new file for the backup.\n"));
  }

  @Test
  void a_backup_into_a_folder_is_named_after_the_log_and_the_time() throws IOException {
    Path copies = Files.createDirectory(folder.resolve("copies"));
    shell.mustDo("backup " + copies);
    assertThat(copies.resolve("boathouse-2026-06-01-143000.db")).isRegularFile();
  }

  @Test
  void a_backup_that_cannot_be_written_leaves_nothing_behind() throws IOException {
    Path inTheWay = Files.writeString(folder.resolve("copies"), "a file");
    Shell.Result refused = shell.run("backup " + inTheWay.resolve("monday.db"));
    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err()).contains("monday.db cannot be created (").hasLineCount(1);
    assertThat(inTheWay).hasContent("a file");
  }

  @Test
  void a_sound_log_is_said_to_be_sound() {
    Shell.Result check = shell.run("check");
    assertThat(check.code()).isZero();
    assertThat(unfolded(check.out()))
        .isEqualTo(
            folder.resolve("boathouse.db")
                + " is undamaged: 1 patch with 1 reading; nothing looks mistyped.\n");
    assertThat(shell.run("check --json").out()).contains("\"sound\" : true,", "\"findings\" : [ ]");
  }

  @Test
  void a_value_that_looks_mistyped_is_named_and_the_answer_is_no() {
    shell.mustDo(BURN.replace("22mm/s", "2200mm/s") + "residue --sure");
    Shell.Result check = shell.run("check");
    assertThat(check.code()).isEqualTo(1);
    assertThat(unfolded(check.out()))
        .startsWith("P-0002 has a hand speed of 2200 mm/s, far from the usual 5 to 60 mm/s;")
        .endsWith("2 patches with 2 readings; 1 value looks mistyped.\n");
  }

  @Test
  void another_bench_comes_in_once_and_codes_give_way() throws IOException {
    Shell bo = atTheSlipway();
    bo.mustDo(BURN + "tint");
    shell.mustDo(BURN + "residue");
    Shell.Result merged = merge("");
    assertThat(merged.code()).isZero();
    assertThat(merged.out())
        .isEqualTo(
            """
            slipway.db: 1 new patch, 1 new reading.
            The code P-0002 is taken by another patch here, so the merged one is P-0003;
              write that on its tape.
            """);
    assertThat(shell.run("patch show P-0003").out())
        .contains("code from P-0002 to P-0003 (P-0002 was taken when it was")
        .contains("tint");
    assertThat(merge("").out()).isEqualTo("slipway.db: nothing new.\n");
  }

  @Test
  void a_trial_sheet_that_was_imported_into_both_logs_does_not_count_twice() throws IOException {
    shell.mustDo(BURN + "residue");
    shell.mustDo(BURN + "tint");
    Path sheet = folder.resolve("all.csv");
    Path rigs = folder.resolve("rigs.csv");
    shell.mustDo("export --to " + sheet + " --rigs " + rigs);
    shell.mustDo("patch void 3 --why knot");
    Shell bo = new Shell(folder).set("CHARLINE_LOG", slipway.toString()).set("CHARLINE_BY", "Bo");
    bo.mustDo("import " + sheet + " --rigs " + rigs);
    bo.mustDo("patch read 1 --passes 2 --outcome clean");

    Shell.Result refused = merge("");

    assertThat(refused)
        .isEqualTo(
            new Shell.Result(
                3,
                "",
                "2 patches in slipway.db are recorded here too, as if one trial sheet had been"
                    + " imported into both logs (P-0001, P-0002), and would count twice; void them"
                    + " in one of the logs, or add --sure if they are different patches.\n"));
    assertThat(shell.run("find").out()).contains("2 patches found: 2 readings");

    bo.mustDo("patch void 1 --why \"came in twice\"");
    assertThat(merge("").err())
        .startsWith("A patch in slipway.db is recorded here too")
        .contains("(P-0002)");
    bo.mustDo("patch void 2 --why \"came in twice\"");
    assertThat(merge("").out()).startsWith("slipway.db: 3 new patches (2 void), 4 new readings");
    assertThat(shell.run("find").out()).contains("3 patches found: 3 readings");
    assertThat(merge("").out()).isEqualTo("slipway.db: nothing new.\n");
  }

  @Test
  void patches_that_only_look_like_ones_of_this_log_come_in_for_who_is_sure() throws IOException {
    Shell bo = atTheSlipway();
    bo.mustDo(BURN + "tint");
    shell.mustDo(BURN + "tint");
    assertThat(merge("").code()).isEqualTo(3);

    assertThat(merge(" --sure").out()).startsWith("slipway.db: 1 new patch, 1 new reading.");
    assertThat(merge("").out()).isEqualTo("slipway.db: nothing new.\n");
    assertThat(bo.run("merge " + folder.resolve("boathouse.db")).code()).isZero();
  }

  @Test
  void a_power_check_of_the_other_bench_is_counted_with_the_patches_whose_power_it_changes()
      throws IOException {
    Shell bo = atTheSlipway();
    bo.mustDo("rig check Heron --at 2026-05-10 --power 80% --metered 110W --sure");
    bo.mustDo("rig check Heron --at 2026-05-20 --power 80% --metered 120W --sure");
    shell.mustDo(BURN + "residue --at 2026-05-02");
    assertThat(shell.run("patch show 1 --json").out()).contains("\"delivered_w\" : 120");
    Shell.Result merged = merge("");
    assertThat(merged.code()).isZero();
    assertThat(merged.out())
        .isEqualTo(
            """
            slipway.db: 2 new power checks of rig Heron; 1 patch counts with another power
              from now on.
            """);
    assertThat(shell.run("patch show 1 --json").out()).contains("\"delivered_w\" : 90");
    assertThat(merge("").out()).isEqualTo("slipway.db: nothing new.\n");
  }

  @Test
  void patches_that_come_in_and_count_with_another_power_here_are_counted_too() throws IOException {
    Shell bo = atTheSlipway();
    shell.mustDo("rig check Heron --at 2026-05-10 --power 80% --metered 110W --sure");
    bo.mustDo(BURN + "residue --at 2026-05-12");
    assertThat(bo.run("patch show 1 --json").out()).contains("\"delivered_w\" : 120");
    assertThat(merge("").out())
        .isEqualTo(
            """
            slipway.db: 1 new patch, 1 new reading; 1 patch counts with another power from
              now on.
            """);
    assertThat(shell.run("patch show 1 --json").out()).doesNotContain("\"delivered_w\" : 120");
    assertThat(merge("").out()).isEqualTo("slipway.db: nothing new.\n");
  }

  @Test
  void what_became_of_patches_and_plans_at_the_other_bench_is_said() throws IOException {
    shell.mustDo("next latex pine --board boathouse-1 --to " + folder.resolve("list.html"));
    Shell bo = atTheSlipway();
    bo.mustDo("patch void 1 --why \"knot\"");
    bo.mustDo("plan void P-0002 --why \"board is gone\"");
    bo.mustDo(
        "patch add --plan P-0003 --board boathouse-2 --finish wall-latex --passes 1 --outcome"
            + " clean");
    bo.mustDo(BURN + "tint");
    bo.mustDo("patch void last --why \"wrong board\"");
    assertThat(merge("").out())
        .isEqualTo(
            """
            slipway.db: 2 new patches (1 void), 2 new readings, 1 planned patch burned
              there, 1 planned patch given up there, 1 amended as there (1 void now).
            """);
  }

  @Test
  void what_both_benches_amended_is_named_until_somebody_decides() throws IOException {
    Shell bo = atTheSlipway();
    shell.mustDo("patch amend 1 --outcome tint --why \"by daylight\"");
    bo.at("2026-06-01T13:00:00Z").mustDo("patch amend 1 --outcome char --why \"cold and wiped\"");
    Shell.Result undecided = merge("");
    assertThat(undecided.code()).isEqualTo(1);
    assertThat(undecided.out())
        .endsWith(
            """
            The reading of P-0001 after 1 pass was amended here and in slipway.db: outcome
              is tint here and char there.
            1 conflict is unresolved; the values here are kept: amend the wrong record, or
              merge again with --take here or --take there.
            """);
    Shell.Result decided = merge(" --take there");
    assertThat(decided.code()).isZero();
    assertThat(decided.out()).endsWith("1 conflict is resolved as recorded there.\n");
    assertThat(shell.run("find char").out()).contains("1 patch found");
    assertThat(merge("").code()).isZero();
  }

  @Test
  void a_reading_that_gives_way_is_told_in_the_history_with_what_was_seen() throws IOException {
    Shell bo = atTheSlipway();
    shell.mustDo("patch read 1 --passes 2 --outcome char");
    bo.mustDo("patch read 1 --passes 2 --outcome clean");
    merge(" --take there --by Cy");
    assertThat(shell.run("patch show 1").out())
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Cy: reading struck: char after 2 passes (as in slipway.db)
            """)
        .doesNotContain("void");
    assertThat(shell.run("patch show 1 --json").out())
        .contains("\"what\" : \"reading\"", "\"before\" : \"char after 2 passes\"")
        .doesNotContain("voided_why");
  }

  @Test
  void a_side_is_here_or_there() {
    assertThat(merge(" --take mine"))
        .isEqualTo(new Shell.Result(2, "", "--take must be here or there, not \"mine\".\n"));
  }

  @Test
  void the_versions_of_program_log_and_sqlite_are_shown() {
    assertThat(shell.run("--version").out())
        .matches(
            "charline \\S+\n"
                + "log version \\d+\n"
                + "SQLite 3\\.\\d+\\.\\d+\n"
                + "Java \\d+\\.\\d+\\.\\d+( of \\d{4}-\\d{2}-\\d{2}, .*(new|old).*)?\n");
  }
}
