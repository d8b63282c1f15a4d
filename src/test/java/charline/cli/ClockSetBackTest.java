package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench computer's clock falls back a year, as after an empty battery. */
class ClockSetBackTest {
  @TempDir Path folder;

  @Test
  void codes_go_on_the_last_patch_is_the_one_recorded_last_and_a_check_names_the_clock() {
    Shell shell = Shell.withBench(folder);
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue");
    shell.at("2025-06-01T08:00:00Z");
    Shell.Result next = shell.run("patch add --like last --hand 18 --outcome clean");
    assertThat(next.code()).isZero();
    assertThat(next.out()).contains("P-0002 recorded: 60 %, hand 18 mm/s");
    assertThat(shell.run("patch show last").out()).contains("P-0002");
    shell.mustDo("patch read P-0001 --passes 2 --outcome tint");
    shell.at("2026-06-02T08:00:00Z").mustDo("patch add --like last --outcome tint");
    assertThat(shell.run("patch show last").out()).contains("P-0003");
    Shell.Result check = shell.run("check");
    assertThat(check.code()).isEqualTo(1);
    assertThat(check.out().replace("\n  ", " "))
        .contains("P-0001 was judged (2025-06-01T10:00+02:00) before it was burned")
        .contains("1 value looks mistyped.");
  }
}
