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

/** Slips that no range catches, and whose patch the last one is. */
class SlipsCommandsTest {
  private static final String BURN =
      "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 2 --outcome"
          + " residue";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  /** The rig is set up with 0.6 mm, 40 kHz and 60 mm; three patches had 60 %, 22 mm/s. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --spot 0.6cm                      | Spot diameter of 6 mm is far from what rig Heron had so far (0.6 mm); correct it, or add --sure.
          --rep 400                         | Repetition rate of 400 kHz is far from what rig Heron had so far (40 kHz); correct it, or add --sure.
          --width 6                         | Scan width of 6 mm is far from what rig Heron had so far (60 mm); correct it, or add --sure.
          --hand 220                        | Hand speed of 220 mm/s is far from what rig Heron had so far (22 mm/s); correct it, or add --sure.
          --power 6                         | Power of 6 % is far from what rig Heron had so far (60 %); correct it, or add --sure.
          --passes 20                       | Passes of 20 is far from what rig Heron had so far (2); correct it, or add --sure.
          --power 250W                      | Power of 250 W is more than rig Heron gives (200 W at 100 %); correct it, or add --sure.
          --patch-area 250                       | Patch size of 250 cm2 is far from what rig Heron had so far (25 cm2); correct it, or add --sure.
          """)
  void a_value_far_from_what_the_rig_had_is_asked_about(String option, String sentence) {
    shell.mustDo(BURN + " --patch-area 25");
    shell.mustDo("patch add --like last --outcome clean");
    shell.mustDo("patch add --like last --outcome clean");

    Shell.Result asked = shell.run("patch add --like last --outcome clean " + option);

    assertThat(asked).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(shell.run("patch add --like last --outcome clean --sure " + option).code()).isZero();
  }

  @Test
  void a_tenfold_pulse_duration_and_spacing_are_asked_about() {
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60 --scan 2000 --spacing 0.1"
            + " --pulse 100 --passes 1 --outcome clean");

    assertThat(shell.run("patch add --like last --pulse 1000 --outcome clean").err())
        .contains("Pulse duration of 1000 ns is far from what rig Heron had so far (100 ns)");
    assertThat(shell.run("patch add --like last --spacing 1 --outcome clean").err())
        .contains("Line spacing of 1 mm is far from what rig Heron had so far (0.1 mm)");
    assertThat(shell.run("patch add --like last --scan 200 --outcome clean").err())
        .contains("Scan speed of 200 mm/s is far from what rig Heron had so far (2000 mm/s)");
  }

  @Test
  void what_the_rig_had_widens_with_every_patch() {
    shell.mustDo(BURN);
    shell.mustDo("patch add --like last --hand 60 --outcome residue");
    shell.mustDo("patch add --like last --hand 120 --outcome residue");
    assertThat(shell.run("patch amend last --hand 12").err()).isEmpty();
    assertThat(shell.run("patch amend last --hand 2").err()).contains("(22 to 60 mm/s)");
  }

  @Test
  void a_check_of_the_log_finds_slips_among_old_patches() {
    for (int k = 0; k < 5; k++) {
      shell.mustDo(k == 0 ? BURN : "patch add --like last --hand 2" + k + " --outcome residue");
    }
    shell.mustDo("patch add --like last --spot 0.6cm --outcome residue --sure");

    Shell.Result check = shell.run("check");

    assertThat(check.code()).isEqualTo(1);
    assertThat(check.out())
        .contains(
            "P-0006: Spot diameter of 6 mm is far from what rig Heron had so far (0.6 mm);\n"
                + "  amend it if it was mistyped.\n")
        .contains("1 value looks mistyped");
  }

  @Test
  void an_import_asks_about_slips_in_its_lines() throws IOException {
    StringBuilder sheet =
        new StringBuilder(
            "patch,burned_at,rig,board,wood,finish,family,power_pct,spot_mm,hand_mm_s,passes,outcome\n");
    for (int k = 1; k <= 8; k++) {
      sheet.append(
          "S-%d,2026-05-0%d,Heron,sill,pine,gloss,alkyd,60,%s,%d,1,residue\n"
              .formatted(k, k, k == 5 ? "6" : "0.6", k == 7 ? 210 : 20 + k));
    }
    Path file = Files.writeString(folder.resolve("slips.csv"), sheet);

    Shell.Result refused = shell.run("import " + file);

    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err())
        .contains(
            "line 6, spot_mm \"6\": Spot diameter of 6 mm is far from what rig Heron had so far (0.6"
                + " mm); correct it, or add --sure.",
            "line 8, hand_mm_s \"210\": Hand speed of 210 mm/s is far from what rig Heron had so far"
                + " (21 to 28 mm/s); correct it, or add --sure.");
    assertThat(shell.run("import " + file + " --sure").code()).isZero();
  }

  @Test
  void residue_after_clean_is_asked_about() throws IOException {
    shell.mustDo(BURN.replace("residue", "clean"));

    assertThat(shell.run("patch read last --passes 3 --outcome residue").err())
        .isEqualTo(
            "Residue after 3 passes cannot well follow clean after 2 passes, as more passes bring no"
                + " finish back; correct the wrong one, or add --sure.\n");
    assertThat(shell.run("patch read last --passes 3 --outcome tint").code()).isEqualTo(2);
    shell.mustDo("patch read last --passes 3 --outcome residue --sure");
    assertThat(shell.run("check").out())
        .contains("P-0001: Residue after 3 passes cannot well follow clean after 2 passes");
    Path file =
        Files.writeString(
            folder.resolve("s.csv"),
            """
            patch,burned_at,rig,board,wood,finish,family,power_pct,hand_mm_s,passes,outcome
            S-1,2026-05-01,Heron,sill,pine,gloss,alkyd,60,20,1,clean
            S-1,2026-05-01,Heron,sill,pine,gloss,alkyd,60,20,2,residue
            """);
    assertThat(shell.run("import " + file).err())
        .contains(
            "line 3, outcome \"residue\": Residue after 2 passes cannot well follow clean after 1 pass");
  }

  @Test
  void a_depth_that_falls_is_asked_about() {
    shell.mustDo(BURN + " --depth 40um");

    assertThat(shell.run("patch read last --passes 3 --outcome clean --depth 30um").err())
        .isEqualTo(
            "Depth removed of 30 um after 3 passes is less than the 40 um before; correct the wrong"
                + " one, or add --sure.\n");
    shell.mustDo("patch read last --passes 3 --outcome clean --depth 90um");
  }

  @Test
  void the_last_patch_is_ones_own_and_none_that_an_import_brought() throws IOException {
    shell.mustDo(BURN);
    Path file =
        Files.writeString(
            folder.resolve("old.csv"),
            """
            patch,burned_at,rig,board,wood,finish,family,power_pct,hand_mm_s,passes,outcome,by
            S-1,2026-05-01,Heron,sill,oak,gloss,alkyd,40,20,1,char,Ada
            """);
    shell.mustDo("import " + file);
    shell.set("CHARLINE_BY", "Bo");
    shell.mustDo(BURN.replace("boathouse-1", "boathouse-2"));
    shell.set("CHARLINE_BY", "Ada");

    assertThat(shell.run("patch add --like last --outcome clean --hand 24").out())
        .contains("on boathouse-1, latex over pine");
    shell.set("CHARLINE_BY", "Bo");
    assertThat(shell.run("patch show last").out()).startsWith("Patch P-0002\n");
    assertThat(shell.run("patch read last --passes 3 --outcome clean").out())
        .startsWith("P-0002 after 3 passes");
    assertThat(shell.run("patch void last --why \"on a knot\"").out()).startsWith("P-0002 is void");
    shell.set("CHARLINE_BY", "Cy");
    assertThat(shell.run("patch add --like last --outcome clean"))
        .isEqualTo(
            new Shell.Result(
                3,
                "",
                "There is no last patch of Cy: what imports and merges brought is nobody's last;"
                    + " name the patch by its code.\n"));
  }

  /** Who sits at the bench and writes down what another burned means that patch by last. */
  @Test
  void a_patch_recorded_for_another_is_the_last_of_both() {
    shell.mustDo(BURN + " --by Bo");

    assertThat(shell.run("patch show last").out()).startsWith("Patch P-0001\n");
    shell.set("CHARLINE_BY", "Bo");
    assertThat(shell.run("patch show last").out()).startsWith("Patch P-0001\n");
  }
}
