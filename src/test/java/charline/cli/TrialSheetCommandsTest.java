package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrialSheetCommandsTest {
  private static final String SHEET =
      """
      patch,burned_at,rig,board,wood,family,power_pct,width_mm,hand_mm_s,passes,outcome
      S-1,2026-05-02 10:00,Heron,shed,oak,shellac,40,60,30,1,residue
      S-1,2026-05-02 10:01,Heron,shed,oak,shellac,40,60,30,2,clean
      """;

  @TempDir Path folder;
  private Shell shell;
  private Path sheet;

  @BeforeEach
  void open() throws IOException {
    shell = Shell.withBench(folder);
    sheet = Files.writeString(folder.resolve("shed.csv"), SHEET);
  }

  @Test
  void a_sheet_is_checked_without_recording_then_imported_once() {
    assertThat(shell.run("import " + sheet + " --check").out())
        .isEqualTo(
            """
            Nothing is recorded yet. This would be imported:
            shed.csv: 1 patch with 2 readings, 1 new board, 1 new finish; 0 patches were
              there already.
            """);
    assertThat(shell.run("find shellac").code()).isEqualTo(1);

    assertThat(shell.run("import " + sheet).out())
        .startsWith("shed.csv: 1 patch with 2 readings, 1 new board");
    assertThat(shell.run("import " + sheet).out()).contains("0 patches with 0 readings", "1 patch");
    assertThat(shell.run("find shellac").out()).contains("1 patch found: ");
  }

  @Test
  void a_bad_row_names_its_line_and_column_and_nothing_is_imported() throws IOException {
    Files.writeString(sheet, SHEET.replace("40,60,30,2,clean", "40,60,30,2,claen"));

    Shell.Result refused = shell.run("import " + sheet);

    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err())
        .startsWith("Nothing was imported: one place in shed.csv must be corrected.")
        .contains("line 3, outcome \"claen\": ");
    assertThat(shell.run("find shellac").code()).isEqualTo(1);
  }

  @Test
  void a_bad_sheet_takes_the_good_ones_back_out() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.csv"), SHEET.replace("Heron", "Hern"));

    Shell.Result refused = shell.run("import " + sheet + " " + bad);

    assertThat(refused.code()).isEqualTo(3);
    assertThat(shell.run("find shellac").code()).isEqualTo(1);
  }

  @Test
  void an_export_is_what_an_import_reads() throws IOException {
    shell.mustDo("import " + sheet);
    Path written = folder.resolve("out.csv");

    assertThat(shell.run("export --family shellac --to " + written).out())
        .isEqualTo("1 patch written to " + written + ".\n");
    assertThat(Files.readString(written)).isEqualTo(shell.run("export --family shellac").out());

    Shell other = new Shell(Files.createDirectories(folder.resolve("annex")));
    other.mustDo("rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 60mm");
    other.mustDo("import " + written);
    assertThat(other.run("export").out()).isEqualTo(Files.readString(written));
  }

  @Test
  void rigs_and_power_checks_are_written_on_request_and_every_dose_comes_back() throws IOException {
    shell.mustDo("rig check Heron --power 80% --metered 120W --at 2026-05-01");
    shell.mustDo("import " + sheet);
    Path written = folder.resolve("out.csv");
    Path rigs = folder.resolve("rigs.csv");
    Path checks = folder.resolve("checks.csv");
    String files = " --rigs " + rigs + " --power-checks " + checks;

    assertThat(shell.run("export --to " + written + files))
        .isEqualTo(
            new Shell.Result(
                0,
                "1 patch written to %s.\n1 rig written to %s.\n1 power check written to %s.\n"
                    .formatted(written, rigs, checks),
                ""));
    assertThat(rigs)
        .hasContent(
            """
            rig,emission,rated_w,wavelength_nm,spot_mm,spot_definition,rep_khz,pulse_ns,width_mm,lens
            Heron,pulsed,200,1064,0.6,1/e2,40,,60,
            """);
    assertThat(checks)
        .hasContent("rig,checked_at,power_pct,metered_w\nHeron,2026-05-01T00:00:00+02:00,80,120\n");

    Shell other = new Shell(Files.createDirectories(folder.resolve("annex")));
    other.mustDo("import " + written + files);
    for (Shell bench : List.of(shell, other)) {
      assertThat(bench.run("patch show S-1 --json").out())
          .contains("\"delivered_w\" : 60", "\"dose_j_cm2\" : 3.33333333");
    }
    assertThat(other.run("export").out()).isEqualTo(Files.readString(written));
  }

  @Test
  void an_export_without_the_power_checks_says_what_rests_on_them() throws IOException {
    shell.mustDo("import " + sheet);
    assertThat(shell.run("export").err()).isEmpty();

    shell.mustDo("rig check Heron --power 80% --metered 120W --at 2026-05-20");
    assertThat(shell.run("export").err()).as("metered after the patch").isEmpty();

    shell.mustDo("rig check Heron --power 80% --metered 120W --at 2026-05-01");
    String said =
        """
        The dose of 1 patch depends on power checks, which this sheet does not
          contain: write them too with --rigs FILE --power-checks FILE, and import all
          three together.
        """;
    Shell.Result printed = shell.run("export");
    assertThat(printed.code()).isZero();
    assertThat(printed.err()).isEqualTo(said);
    assertThat(printed.out()).startsWith("patch,").doesNotContain("rests");
    Path rigs = folder.resolve("rigs.csv");
    assertThat(shell.run("export --rigs " + rigs).err())
        .isEqualTo(said + "1 rig written to " + rigs + ".\n");
  }

  @Test
  void an_export_of_rigs_without_a_power_check_says_so_and_writes_no_empty_file() {
    shell.mustDo("import " + sheet);
    Path checks = folder.resolve("checks.csv");
    Shell.Result result =
        shell.run(
            "export --to %s --rigs %s --power-checks %s"
                .formatted(folder.resolve("out.csv"), folder.resolve("rigs.csv"), checks));
    assertThat(result.code()).isZero();
    assertThat(result.err().replace("\n  ", " "))
        .isEqualTo("None of these rigs has a power check, so " + checks + " is not written.\n");
    assertThat(checks).doesNotExist();
  }

  @Test
  void the_files_of_an_export_must_differ_be_new_and_belong_together() throws IOException {
    shell.mustDo("import " + sheet);
    Path rigs = Files.writeString(folder.resolve("rigs.csv"), "mine");
    Path out = folder.resolve("out.csv");
    assertThat(shell.run("export --to " + out + " --rigs " + rigs))
        .isEqualTo(
            new Shell.Result(
                2,
                "",
                rigs + " already exists; give another name, or --replace to overwrite it.\n"));
    assertThat(shell.run("export --power-checks " + out).err())
        .isEqualTo(
            "--power-checks needs --rigs, since `charline import` reads the two together; give a"
                + " file for --rigs too.\n");
    assertThat(shell.run("export --to " + out + " --rigs " + out).err())
        .isEqualTo(
            "Each part of an export needs its own file; %s is given twice.\n".formatted(out));
    assertThat(out).doesNotExist();
    assertThat(rigs).hasContent("mine");
    assertThat(shell.run("export --replace --to " + out + " --rigs " + rigs).code()).isZero();
  }

  @Test
  void an_export_writes_over_nothing_unasked() {
    shell.mustDo("import " + sheet);

    assertThat(shell.run("export --to " + sheet).err())
        .isEqualTo(sheet + " already exists; give another name, or --replace to overwrite it.\n");
    assertThat(shell.run("export --replace --to " + sheet).code()).isZero();
  }

  @Test
  void nothing_to_export_answers_no() {
    assertThat(shell.run("export"))
        .isEqualTo(new Shell.Result(1, "", "No patch matches, so there is nothing to export.\n"));
  }

  @Test
  void a_missing_file_is_named() {
    assertThat(shell.run("import nowhere.csv"))
        .isEqualTo(
            new Shell.Result(2, "", "There is no file nowhere.csv; check its name and folder.\n"));
    assertThat(shell.run("import").err())
        .isEqualTo("Give a trial sheet, such as `charline import boathouse.csv`.\n");
  }
}
