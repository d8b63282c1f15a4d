package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench computer's clock falls back a year, as after an empty battery. */
class ClockSetBackTest {
  @TempDir Path folder;

  @Test
  void codes_go_on_the_last_patch_is_the_one_recorded_last_and_no_reading_precedes_its_burning() {
    Shell shell = Shell.withBench(folder);
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue");
    shell.at("2025-06-01T08:00:00Z");
    assertThat(shell.run("patch add --like last --hand 18 --outcome clean"))
        .isEqualTo(
            new Shell.Result(
                2,
                "",
                "The clock of this computer says 2025-06-01 10:00, earlier than the last record in"
                    + " this log (2026-06-01 14:30); set the clock, or add --sure.\n"));
    Shell.Result next = shell.run("patch add --like last --hand 18 --outcome clean --sure");
    assertThat(next.code()).isZero();
    assertThat(next.out()).contains("P-0002 recorded: 60 %, hand 18 mm/s");
    assertThat(shell.run("patch show last").out()).contains("P-0002");
    assertThat(shell.run("patch read P-0001 --passes 2 --outcome tint"))
        .isEqualTo(
            new Shell.Result(
                3,
                "",
                "The clock of this computer says 2025-06-01 10:00, before P-0001 was burned on"
                    + " 2026-06-01 14:30; set the clock, or give the time with --at.\n"));
    shell.at("2026-06-02T08:00:00Z").mustDo("patch read P-0001 --passes 2 --outcome tint");
    shell.mustDo("patch add --like last --outcome tint");
    assertThat(shell.run("patch show last").out()).contains("P-0003");
    assertThat(shell.run("check").code()).isZero();
  }

  /** Its power check is in the future then, and the patch would get the dose of the rating. */
  @Test
  void a_clock_before_the_power_check_of_the_rig_is_doubted() {
    Shell shell = Shell.withBench(folder);
    shell.mustDo("rig check Heron --power 50% --metered 90W");
    shell.at("1970-01-01T00:10:00Z");
    String patch =
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue";
    assertThat(shell.run(patch).err())
        .contains("earlier than the last record in this log (2026-06-01 13:30); set the clock");
    assertThat(shell.run("rig check Heron --power 60% --metered 110W").err())
        .contains("earlier than the last record");
    shell.mustDo(patch + " --sure");
    assertThat(shell.at("2026-06-02T08:00:00Z").run("check"))
        .extracting(Shell.Result::code, r -> r.out().replaceAll("\\s+", " "))
        .satisfies(
            found -> assertThat(found.get(0)).isEqualTo(1),
            found ->
                assertThat((String) found.get(1))
                    .contains(
                        "P-0001: The year 1970 is too early or too late for trials with these"
                            + " lasers; amend the time."));
  }
}
