package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Shell.Person;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The next patch in a few words, and slips put right without many more. */
class PatchNextCommandTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void one_patch() {
    shell = Shell.withBench(folder);
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22 --passes 1"
            + " --outcome residue");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          p 18 clean                | 60 %, hand 18 mm/s, 1 pass: | clean.
          p clean 18                | 60 %, hand 18 mm/s, 1 pass: | clean.
          p ch 55%                  | 55 %, hand 22 mm/s, 1 pass: | char.
          p 2p r                    | 60 %, hand 22 mm/s, 2 passes: | residue.
          p 18mm/s 2 passes charred | 60 %, hand 18 mm/s, 2 passes: | char.
          p burnt                   | 60 %, hand 22 mm/s, 1 pass: | char.
          p ok 120W                 | 120 W, hand 22 mm/s, 1 pass: | clean.
          p hand 30 tint+residue    | 60 %, hand 30 mm/s, 1 pass: | tint+residue.
          p h30 cleared             | 60 %, hand 30 mm/s, 1 pass: | clean.
          p on boathouse-2 clean    | on boathouse-2, latex over pine | clean.
          p spot 0.9 clean          | 60 %, hand 22 mm/s, 1 pass: | clean.
          """)
  void what_changed_and_the_outcome_come_in_any_order(String line, String first, String last) {
    Shell.Result done = shell.run(line);

    assertThat(done.err()).isEmpty();
    assertThat(done.out().replaceAll("\\s+", " ")).contains("P-0002", first, last);
  }

  /** With the return key. */
  @Test
  void the_next_patch_takes_twenty_keystrokes_at_most() {
    for (String line : new String[] {"p 18 clean", "p 18 char", "p 18 res", "p 18 tint"}) {
      assertThat(("charline " + line + "\n").length()).isLessThanOrEqualTo(20);
      shell.mustDo(line);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          p 18 c        | "c" may be clean or char; add a letter.
          p 18 20 clean | Say hand once: it came as 18 and as 20.
          p 0.9mm clean | I do not know which knob "0.9mm" is; put its name before it, such as spot 0.9mm.
          p 18          | The outcome is missing: give --outcome clean, or tint, char and residue joined by +.
          """)
  void what_it_does_not_understand_is_refused(String line, String sentence) {
    assertThat(shell.run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(shell.run("find").out()).contains("1 patch found");
  }

  @Test
  void a_terminal_asks_what_changed_and_how_it_came_out() {
    Person person = new Person("18", "clean");

    assertThat(shell.asking(person, "p").out()).contains("60 %, hand 18 mm/s, 1 pass:");
    assertThat(person.questions())
        .containsExactly(
            "What changed (18, 60%, 2p, on BOARD; Enter for nothing) []",
            "Outcome (clean, tint, char, residue)");
  }

  @Test
  void nor_does_any_other_slip_of_the_last_minutes() {
    shell
        .mustDo("board add slipway --wood oak")
        .mustDo("rig check Heron --metered 190W")
        .mustDo("rig upkeep Heron --what service")
        .mustDo("sample add lead free --finish wall-latex")
        .mustDo("wood add driftwood --like pine")
        .mustDo("family add \"oar varnish\" --like varnish");
    List<String> slips =
        List.of(
            "board void slipway",
            "rig check void Heron last",
            "rig upkeep void Heron last",
            "sample amend S-0001 --result found",
            "sample void S-0001",
            "wood amend driftwood --like oak",
            "family amend \"oar varnish\" --like shellac");
    shell.at("2026-06-01T12:41:00Z");
    slips.forEach(
        slip ->
            assertThat(shell.run(slip).err())
                .as(slip)
                .startsWith("--why: ")
                .endsWith(" only with a reason; give one.\n"));
    shell.at("2026-06-01T12:39:00Z");
    slips.forEach(shell::mustDo);
    assertThat(shell.run("board show slipway").out()).contains("void because", "slip");
  }

  @Test
  void a_slip_of_the_last_minutes_needs_no_reason() {
    shell.mustDo("p 18 clean");
    assertThat(shell.mustDo("patch void last").run("patch show 2").out())
        .contains("void because", "slip");

    shell.mustDo("p 18 clean").at("2026-06-01T12:41:00Z");
    assertThat(shell.run("patch void 3").err())
        .isEqualTo("--why: a patch is void only with a reason; give one.\n");
  }

  @Test
  void patches_that_a_question_names_are_shown_before_they_are_void() {
    shell.mustDo("p 18 char").mustDo("p 16 char").mustDo("p 14 clean");

    Shell.Result shown =
        shell.run("patch void --those \"mine that charred\" --why \"wrong board\"");
    assertThat(shown.code()).isEqualTo(2);
    assertThat(shown.err().replaceAll("\\s+", " "))
        .contains(
            "burned by Ada", "2 patches: P-0002, P-0003", "add --yes to void these 2 patches");
    assertThat(shell.run("find char").out()).contains("2 patches found");

    Person no = new Person("");
    shell.asking(no, "patch void --those char --why \"wrong board\"");
    assertThat(no.questions()).containsExactly("Really void 2 patches (yes, no) [no]");
    assertThat(shell.run("find char").out()).contains("2 patches found");

    shell.mustDo("patch void --those char --why \"wrong board\" --yes");
    assertThat(shell.run("find char").code()).isEqualTo(1);
    shell.mustDo("patch amend --those \"14 mm/s\" --board boathouse-2 --yes");
    assertThat(shell.run("patch show 4").out()).contains("boathouse-2");
  }
}
