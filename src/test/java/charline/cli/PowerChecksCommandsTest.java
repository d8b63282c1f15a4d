package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a power check does to windows, and how it comes and goes with a sheet. */
class PowerChecksCommandsTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = new Shell(folder).at("2026-11-02T09:00:00Z");
    shell.mustDo(
        "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv --power-checks"
            + " sample-trials/power-checks.csv");
  }

  private String out(String line) {
    return shell.run(line).out();
  }

  /** Metered at 60 %, written down as if the dial had been at 100 %. */
  @Test
  void a_check_that_is_put_right_makes_the_windows_of_its_rig_valid_again() {
    assertThat(shell.run("rig check heron --metered 171W").err())
        .isEqualTo(
            "171 W at 100 % is 57 % of what heron should give; check both numbers, or add"
                + " --sure.\n");
    shell.mustDo("rig check heron --metered 171W --sure");
    assertThat(out("window latex pine")).contains("NOT VALID");
    assertThat(shell.run("rig drift heron").code()).isEqualTo(1);

    shell.mustDo("rig check amend heron last --power 60% --why \"the dial was at 60 %\"");

    assertThat(shell.run("rig drift heron").code()).isZero();
    assertThat(out("window latex pine"))
        .doesNotContain("NOT VALID")
        .contains("power as metered on 2026-11-02");
    shell.mustDo("rig check amend heron last --power 100% --sure");
    assertThat(shell.run("rig drift heron").code()).isEqualTo(1);
    shell.mustDo("rig check void heron last --why \"the dial was at 60 %\"");
    assertThat(shell.run("rig drift heron").code()).isZero();
  }

  /** A day alone says that it was metered that day, and so counts for all of it. */
  @Test
  void a_check_dated_by_its_day_counts_from_the_morning_on() throws IOException {
    shell.mustDo("rig add Gull --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 60mm");
    shell.mustDo("rig check Gull --power 100% --metered 150W --at 2026-10-20");
    for (String time : List.of("08:00", "12:00", "15:00")) {
      shell.mustDo(
          "patch add --rig Gull --board \"wall panel offcut 4\" --finish \"wall panel latex\""
              + " --power 60%% --hand 20 --passes 1 --outcome residue --at \"2026-10-20 %s\""
                  .formatted(time));
      assertThat(out("patch show last --json")).contains("\"delivered_w\" : 90");
    }
    shell.mustDo("rig check amend Gull last --at 2026-10-21");
    assertThat(out("patch show last --json")).contains("\"delivered_w\" : 120");
    shell.mustDo("rig check amend Gull last --at 2026-10-20");
    assertThat(out("patch show P-0001 --json"))
        .contains("2026-10-20T08:00")
        .contains("\"delivered_w\" : 90");
    shell.mustDo("rig check amend Gull last --at 2026-10-21");

    Path sheet = folder.resolve("day.csv");
    Files.writeString(sheet, "rig,checked_at,power_pct,metered_w\nGull,2026-10-20,100,150\n");
    Path rigs = folder.resolve("gull.csv");
    shell.mustDo("export --to %s --rigs %s".formatted(folder.resolve("all.csv"), rigs));
    shell.mustDo("import --rigs %s --power-checks %s".formatted(rigs, sheet));
    assertThat(out("patch show last --json")).contains("\"delivered_w\" : 90");
  }

  @Test
  void a_window_says_that_the_power_was_metered_at_another_rate() {
    shell.mustDo("rig check heron --metered 270W --rep 30kHz");
    assertThat(out("window latex pine").replaceAll("\\s+", " "))
        .contains("power as metered on 2026-11-02 at 30 kHz, not at 60 kHz");
  }

  @Test
  void rate_and_pulse_of_a_check_and_the_largest_pulse_come_back_from_a_sheet() throws IOException {
    shell.mustDo("rig check heron --metered 270W --rep 30kHz --pulse 200ns");
    shell.mustDo("rig amend heron --max-pulse 12.5mJ");
    Path rigs = folder.resolve("rigs.csv");
    Path checks = folder.resolve("checks.csv");
    shell.mustDo(
        "export --to %s --rigs %s --power-checks %s"
            .formatted(folder.resolve("patches.csv"), rigs, checks));
    assertThat(Files.readString(checks))
        .startsWith("rig,checked_at,power_pct,metered_w,rep_khz,pulse_ns\n")
        .contains("heron,2026-11-02T10:00:00+01:00,100,270,30,200\n");
    assertThat(Files.readString(rigs)).contains("width_mm,max_pulse_mj,lens\n", ",60,12.5,");

    Shell other = new Shell(Files.createDirectory(folder.resolve("other")));
    other.at("2026-11-02T09:00:00Z");
    other.mustDo(
        "import %s --rigs %s --power-checks %s"
            .formatted(folder.resolve("patches.csv"), rigs, checks));
    assertThat(other.run("rig show heron").out())
        .contains("largest pulse   12.5 mJ", "270 W at 100 % and 30 kHz, 200 ns on 2026-11-02");
    shell.mustDo(
        "import "
            + folder.resolve("patches.csv")
            + " --rigs "
            + rigs
            + " --power-checks "
            + checks);
    assertThat(shell.run("rig show heron --json").out().split("\"metered_w\"")).hasSize(4);
  }
}
