package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Shell.Person;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AskingTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  @Test
  void a_terminal_asks_for_what_is_missing() {
    Person person = new Person("boathouse-1", "wall-latex", "60%", "22mm/s", "", "residue");

    assertThat(shell.asking(person, "patch add").out())
        .contains("P-0001 recorded: 60 %, hand 22 mm/s, 1 pass:");
    assertThat(person.questions())
        .containsExactly(
            "Board",
            "Finish",
            "Power, in % of the rated power or in W",
            "Hand speed, in mm/s",
            "Passes so far [1]",
            "Outcome (clean, tint, char, residue)");
  }

  @Test
  void the_last_values_are_offered() {
    shell.mustDo(
        "patch add --board boathouse-2 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue");
    Person person = new Person("", "", "", "18", "", "clean");

    assertThat(shell.asking(person, "patch add").out())
        .contains("|  P-0002  |  on boathouse-2", "60 %, hand 18 mm/s, 1 pass:");
    assertThat(person.questions()).contains("Board [boathouse-2]", "Hand speed, in mm/s [22mm/s]");
  }

  @Test
  void only_the_outcome_is_asked_for_a_copy() {
    shell.mustDo(
        "patch add --board boathouse-2 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue");
    Person person = new Person("char");

    assertThat(shell.asking(person, "patch add --like last").out()).contains("fluence; char.");
    assertThat(person.questions()).containsExactly("Outcome (clean, tint, char, residue)");
  }

  @Test
  void a_wrong_answer_is_explained_and_asked_again() {
    Person person =
        new Person("boathouse-9", "boathouse-1", "wall-latex", "lots", "60", "22", "1", "clean");

    Shell.Result result = shell.asking(person, "patch add");

    assertThat(result.code()).isZero();
    assertThat(result.err())
        .contains("No board \"boathouse-9\" in this log", "not \"lots\"")
        .hasLineCount(2);
  }

  @Test
  void who_leaves_records_nothing() {
    Shell.Result result = shell.asking(new Person("boathouse-1"), "patch add");

    assertThat(result)
        .isEqualTo(
            new Shell.Result(
                2, "", "The questions were left unanswered, so nothing was recorded.\n"));
    assertThat(shell.run("find").code()).isEqualTo(1);
  }

  @Test
  void a_further_reading_offers_the_next_pass() {
    shell.mustDo(
        "patch add --board boathouse-2 --finish wall-latex --power 60% --hand 22mm/s --passes 2"
            + " --outcome residue");
    Person person = new Person("", "clean");

    assertThat(shell.asking(person, "patch read last").out())
        .isEqualTo("P-0001 after 3 passes, 27.3 J/cm2 in all: clean.\n");
    assertThat(person.questions()).contains("Passes so far [3]");
  }
}
