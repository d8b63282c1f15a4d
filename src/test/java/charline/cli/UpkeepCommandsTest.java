package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is done to a rig, on the command line. */
class UpkeepCommandsTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
    shell.mustDo("rig upkeep Heron --what window-cleaned --at 2026-05-01 --hours 412h");
    shell.mustDo("rig upkeep Heron --what service --at 2026-05-20 --note \"new fan\"");
  }

  private String out(String line) {
    return shell.run(line).out();
  }

  @Test
  void upkeep_is_listed_amended_void_and_brought_back_with_its_history() {
    assertThat(out("rig upkeep list Heron"))
        .contains(
            "2026-05-01  window-cleaned    412", "2026-05-20  service             -  new fan");
    shell.mustDo("rig upkeep amend Heron 2026-05-01 --what window-changed --why receipt");
    shell.mustDo("rig upkeep void Heron last --why \"the other rig\"");
    assertThat(out("rig upkeep list Heron")).contains("window-changed").doesNotContain("service");
    assertThat(out("rig show Heron").replaceAll("\\s+", " "))
        .contains(
            "upkeep window-changed on 2026-05-01 at 412 h",
            "void upkeep service on 2026-05-20: new fan, void because: the other rig",
            "upkeep of 2026-05-01: what was done from window-cleaned to window-changed");
    shell.mustDo("rig upkeep amend Heron 2026-05-20 --bring-back");
    assertThat(out("rig upkeep list Heron --json")).contains("\"what\" : \"service\"");
  }

  @Test
  void other_work_is_asked_about_and_an_unknown_entry_is_refused() {
    assertThat(shell.run("rig upkeep Heron --what widow-cleaned").err())
        .isEqualTo(
            "\"widow-cleaned\" is none of window-cleaned, window-changed, lens, coolant, service;"
                + " choose one of them, or add --sure.\n");
    shell.mustDo("rig upkeep Heron --what fibre --sure");
    assertThat(shell.run("rig upkeep void Heron 2026-05-02 --why no").err())
        .startsWith("No upkeep of rig Heron is meant by \"2026-05-02\"; it has window-cleaned on");
    assertThat(shell.run("rig upkeep Heron --what lens --hours -1").err())
        .isEqualTo("Running hours must be 0 or more h, not -1 h.\n");
  }

  @Test
  void upkeep_marks_the_chart_of_drift_and_starts_a_new_run() {
    shell.mustDo("rig check Heron --metered 190W --at 2026-04-01");
    shell.mustDo("rig check Heron --metered 165W --at 2026-04-20");
    assertThat(shell.run("rig drift Heron").code()).isZero();
    shell.mustDo("rig check Heron --metered 190W --at 2026-05-02");
    assertThat(out("rig drift Heron"))
        .contains(
            "Rig Heron shows no drift.",
            "2026-05-01  window-cleaned ",
            "new run",
            "2026-05-20  service ");
    shell.mustDo("rig upkeep void Heron 2026-05-01 --why no");
    shell.mustDo("rig upkeep void Heron 2026-05-20 --why no");
    assertThat(shell.run("rig drift Heron").code()).as("one run again").isEqualTo(1);
    assertThat(out("rig drift Heron --json")).contains("\"upkeep\" : [ ]", "\"run\" : 1");
  }

  @Test
  void upkeep_comes_and_goes_with_the_rigs_of_an_export() throws IOException {
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 20 --passes 1"
            + " --outcome clean");
    Path sheet = folder.resolve("out.csv");
    Path rigs = folder.resolve("rigs.csv");
    Path upkeep = folder.resolve("upkeep.csv");
    shell.mustDo("export --to %s --rigs %s --upkeep %s".formatted(sheet, rigs, upkeep));
    assertThat(Files.readString(upkeep))
        .isEqualTo(
            """
            rig,done_at,what,hours,note
            Heron,2026-05-01T12:00:00+02:00,window-cleaned,412,
            Heron,2026-05-20T12:00:00+02:00,service,,new fan
            """);
    String listed = out("rig upkeep list Heron");
    Files.delete(folder.resolve("boathouse.db"));
    shell.mustDo("import %s --rigs %s --upkeep %s".formatted(sheet, rigs, upkeep));
    assertThat(out("rig upkeep list Heron")).isEqualTo(listed);
    shell.mustDo("import %s --rigs %s --upkeep %s".formatted(sheet, rigs, upkeep));
    assertThat(out("rig upkeep list Heron")).as("once").isEqualTo(listed);
  }
}
