package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Trials of one coat on three oaks and a pine: each wood is judged alone until somebody pools. */
class NearWoodsTest {
  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void burn() {
    shell = Shell.withBench(folder);
    shell.mustDo("board add sill --wood oak");
    shell.mustDo("board add tread --wood \"northern red oak\"");
    shell.mustDo("board add rail --wood \"white oak\"");
    burn("sill", 3);
    burn("tread", 3);
    burn("rail", 2);
    burn("boathouse-1", 1);
  }

  private static void burn(String board, int patches) {
    for (int i = 0; i < patches; i++) {
      shell.mustDo(
          "patch add --board %s --finish wall-latex --power %d --hand 22 --passes 2 --outcome %s"
              .formatted(board, 40 + 10 * i, i == 2 ? "char" : i == 1 ? "clean" : "residue"));
    }
  }

  private static String said(String line) {
    Shell.Result result = shell.run(line);
    return (result.out() + result.err()).replaceAll("\\s+", " ");
  }

  @Test
  void the_window_names_the_trials_on_near_woods_and_how_to_pool_them() {
    assertThat(said("window latex oak"))
        .contains(
            "Not counted: 3 patches on northern red oak and 2 patches on white oak, which are near"
                + " woods. Pool them with --with-wood \"northern red oak\" --with-wood \"white"
                + " oak\".");
    assertThat(shell.run("window latex oak --json").out().replaceAll("\\s+", " "))
        .contains(
            "\"near_woods\" : [ { \"wood\" : \"northern red oak\", \"patches\" : 3 }, { \"wood\" :"
                + " \"white oak\", \"patches\" : 2 } ]");
    assertThat(said("window latex \"white oak\""))
        .contains("Not counted: 3 patches on northern red oak and 3 patches on oak");
    assertThat(said("window latex pine")).doesNotContain("near wood");
  }

  @Test
  void woods_are_pooled_on_request_and_the_answer_says_so() {
    String pooled = said("window latex oak --with-wood \"red oak\"");

    assertThat(pooled)
        .startsWith("latex on northern red oak + oak, pulsed 1064 nm, rig Heron:")
        .contains("Counted: 6 patches on 2 boards")
        .contains(
            "Pooled: 3 patches on northern red oak and 3 patches on oak, judged as one wood whose"
                + " boards differ.")
        .contains("Not counted: 2 patches on white oak, which is a near wood.");
    assertThat(shell.run("window latex oak --with-wood \"red oak\" --json").out())
        .contains("\"wood\" : \"northern red oak + oak\"", "\"patches\" : 6");
    assertThat(said("window latex any")).contains("Pooled: ", "3 patches on northern red oak");
  }

  @ParameterizedTest
  @ValueSource(strings = {"onset", "removal", "window", "next"})
  void every_question_may_pool(String question) {
    assertThat(
            said(
                question + " latex oak --with-wood \"northern red oak\" --with-wood \"white oak\""))
        .contains("northern red oak + oak + white oak");
  }

  @Test
  void what_was_planned_for_pooled_woods_is_recorded_on_any_of_them(@TempDir Path own)
      throws IOException {
    Files.copy(folder.resolve("boathouse.db"), own.resolve("boathouse.db"));
    Shell shell = new Shell(own);
    Path list = own.resolve("list.html");
    shell.mustDo(
        "next latex oak --with-wood \"white oak\" --count 1 --board rail --board sill --board tread"
            + " --to "
            + list);
    String code = shell.run("plan list --csv").out().lines().skip(1).findFirst().orElseThrow();
    assertThat(code).contains("oak + white oak");
    assertThat(
            shell.run(
                "patch add --plan %s --board rail --finish wall-latex --outcome clean --passes 1"
                    .formatted(code.substring(0, code.indexOf(',')))))
        .satisfies(result -> assertThat(result.code()).isZero());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          window latex any --with-wood oak       | All woods are pooled already; leave the others out.
          window latex oak --with-wood rock      | No wood "rock" in this log; nearest: oak.
          window --all --with-wood oak           | --with-wood: it pools with the wood that you name, and --all names none; leave one out.
          """)
  void what_cannot_be_pooled_is_refused(String line, String sentence) {
    assertThat(shell.run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
  }
}
