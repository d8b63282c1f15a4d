package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Every command that shows or changes anything has JSON, and recording commands have one shape. */
class JsonEverywhereTest {
  private static final Map<String, String> WITHOUT =
      Map.of(
          "export", "its output is the trial sheet itself; find --json gives the same patches",
          "bench", "it serves the page until somebody stops it",
          "demo", "it shows commands with what they print",
          "completion", "its output is a script for a shell");

  @TempDir Path folder;

  @Test
  void every_command_has_json_or_a_reason_not_to() {
    PrintStream nowhere =
        new PrintStream(new ByteArrayOutputStream(), false, StandardCharsets.UTF_8);
    CommandLine line =
        Commands.everything(
            new CommandContext(Asker.NOBODY, nowhere, nowhere, Map.of(), Clock.systemUTC()));
    for (String command : Commands.all()) {
      CommandLine at = line;
      for (String word : command.split(" ")) {
        at = at.getSubcommands().get(word);
      }
      assertThat(at.getCommandSpec().findOption("--json") != null)
          .as(command)
          .isEqualTo(!WITHOUT.containsKey(command));
    }
  }

  @Test
  void what_is_recorded_is_printed_as_the_record_that_show_prints() {
    Shell shell = Shell.withBench(folder);
    isShown(
        shell, "board add sill --wood oak --job boathouse --json", "board show sill", "cautions");
    isShown(shell, "board amend sill --moisture 9% --json", "board show sill");
    isShown(shell, "board void sill --why rotten --json", "board show sill");
    isShown(shell, "finish add enamel --coat alkyd:dark --json", "finish show enamel", "cautions");
    isShown(shell, "finish amend enamel --coat alkyd:mid --json", "finish show enamel", "cautions");
    isShown(
        shell,
        "rig add Gull --kind cw --rated 1000W --spot 1mm --width 60mm --json",
        "rig show Gull");
    isShown(shell, "rig amend Gull --rated 1200W --json", "rig show Gull");
    isShown(shell, "wood add driftwood --like pine --json", "wood show driftwood");
    isShown(shell, "wood amend driftwood --like oak --why seen --json", "wood show driftwood");
    isShown(
        shell, "family add \"oar varnish\" --like varnish --json", "family show \"oar varnish\"");
    isShown(
        shell,
        "sample add lead found --finish enamel --on 2026-05-04 --json",
        "sample show S-0001",
        "cautions");
    isShown(shell, "sample amend S-0001 --result free --why post --json", "sample show S-0001");
    isShown(shell, "sample void S-0001 --why lost --json", "sample show S-0001");
  }

  private static void isShown(Shell shell, String recording, String showing, String... besides) {
    Map<String, Object> recorded = shell.json(recording);
    Map<String, Object> shown = shell.json(showing + " --json");
    for (String more : besides) {
      assertThat(recorded).as(recording).containsKey(more);
      recorded.remove(more);
    }
    assertThat(recorded).as(recording).isNotEmpty();
    shown.keySet().retainAll(recorded.keySet());
    assertThat(recorded).as(recording).isEqualTo(shown);
  }

  @Test
  void checks_and_upkeep_come_under_the_name_of_their_rig() {
    Shell shell = Shell.withBench(folder);
    assertThat(shell.json("rig check Heron --metered 187W --json"))
        .containsEntry("rig", "Heron")
        .containsEntry("metered_w", 187)
        .containsEntry("factor", 0.935);
    assertThat(shell.json("rig check amend Heron last --metered 188W --json"))
        .containsEntry("metered_w", 188);
    assertThat(shell.json("rig check void Heron last --why cold --json"))
        .containsEntry("void", "cold");
    assertThat(shell.json("rig upkeep Heron --what service --hours 412 --json"))
        .containsEntry("rig", "Heron")
        .containsEntry("what", "service")
        .containsEntry("hours", 412);
    assertThat(shell.json("rig upkeep amend Heron last --hours 421 --json"))
        .containsEntry("hours", 421);
    assertThat(shell.json("rig upkeep void Heron last --why other --json"))
        .containsEntry("void", "other");
  }

  @Test
  void what_is_done_to_several_is_a_list_of_records() {
    Shell shell = Shell.withBench(folder);
    for (String outcome : new String[] {"clean", "char"}) {
      shell.mustDo(
          "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
              + " --outcome "
              + outcome);
    }
    String voided = shell.run("patch void 1 2 --json").out();
    assertThat(voided).startsWith("[").contains("\"P-0001\"", "\"P-0002\"", "\"void\" : \"slip\"");
    assertThat(shell.json("board join boathouse-2 --into boathouse-1 --json"))
        .containsEntry("board", "boathouse-1")
        .containsEntry("joined", "boathouse-2")
        .containsEntry("patches", 0);
    assertThat(shell.json("backup " + folder.resolve("copy.db") + " --json"))
        .containsEntry("file", folder.resolve("copy.db").toString())
        .containsEntry("patches", 0);
    assertThat(shell.json("merge " + folder.resolve("copy.db") + " --json"))
        .containsEntry("file", "copy.db")
        .containsEntry("patches", 0)
        .containsKey("conflicts");
  }
}
