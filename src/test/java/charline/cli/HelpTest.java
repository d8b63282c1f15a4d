package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

class HelpTest {
  private static final Pattern OPTION = Pattern.compile("--[a-z][a-z-]*");
  private static final Pattern UNIT =
      Pattern.compile("\\b(mm/s|mm|um|nm|kHz|ns|W|J/cm2|cm2|m2|in h)\\b|%");

  /** Commands that neither take nor show a quantity. */
  private static final List<String> WITHOUT_QUANTITIES =
      List.of(
          "merge",
          "backup",
          "rig join",
          "rig upkeep void",
          "board join",
          "board void",
          "finish join",
          "completion");

  @TempDir Path folder;

  static Stream<String> commands() {
    return Commands.all().stream();
  }

  @ParameterizedTest
  @MethodSource("commands")
  void every_command_has_help_with_an_example_and_units(String command) {
    Shell.Result help = new Shell(folder).run(command + " --help");

    assertThat(help.code()).isZero();
    assertThat(help.out())
        .contains("Usage: charline " + command)
        .containsPattern("(?m)^Examples?.*:$\n  charline " + command);
    if (!WITHOUT_QUANTITIES.contains(command)) {
      assertThat(help.out()).containsPattern(UNIT);
    }
    assertThat(help.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void help_names_only_options_that_exist(String command) {
    CommandLine line = line(List.of(command.split(" ")));
    String help = new Shell(folder).run(command + " --help").out();

    List<String> named = OPTION.matcher(help).results().map(MatchResult::group).distinct().toList();
    assertThat(options(line)).containsAll(named);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void examples_are_understood(String command) {
    for (String example : examples(new Shell(folder).run(command + " --help").out())) {
      String[] words = Shell.words(example).stream().skip(1).toArray(String[]::new);
      assertThatCode(() -> Commands.lineFor(words, desk()).parseArgs(words))
          .as(example)
          .doesNotThrowAnyException();
    }
  }

  @Test
  void the_first_help_lists_every_command_and_its_examples_run() {
    Shell shell = new Shell(folder);
    String help = shell.run("--help").out();

    assertThat(help)
        .contains(Commands.all().stream().map(c -> "\n  " + c.split(" ")[0] + " ").toList());
    for (String example : examples(help)) {
      shell.mustDo(example.substring("charline ".length()));
    }
    assertThat(shell.run("find").out()).contains("2 patches found");
  }

  @Test
  void the_readme_names_only_commands_and_options_that_exist() throws IOException {
    String readme = Files.readString(Path.of("README.md")).replaceAll("(?s)```.*?```", "");
    List<String> codes =
        Pattern.compile("`([^`]+)`")
            .matcher(readme)
            .results()
            .map(code -> code.group(1).replaceAll("\\s+", " "))
            .toList();
    Set<String> any =
        Commands.all().stream()
            .flatMap(command -> options(line(List.of(command.split(" ")))).stream())
            .collect(Collectors.toSet());

    assertThat(codes).anyMatch(code -> code.startsWith("charline "));
    for (String code : codes) {
      List<String> named = OPTION.matcher(code).results().map(MatchResult::group).toList();
      assertThat(any).as(code).containsAll(named);
      if (code.startsWith("charline ")) {
        String words = code.substring("charline ".length()) + " ";
        List<String> meant =
            Commands.all().stream().filter(command -> words.startsWith(command + " ")).toList();
        assertThat(meant).as(code).hasSize(1);
        assertThat(options(line(List.of(meant.get(0).split(" "))))).as(code).containsAll(named);
      }
    }
  }

  @Test
  void help_with_a_command_after_it_is_that_commands_help() {
    Shell shell = new Shell(folder);

    assertThat(shell.run("help patch add").out()).isEqualTo(shell.run("patch add --help").out());
  }

  @Test
  void no_command_shows_the_help_and_is_not_understood() {
    Shell.Result result = new Shell(folder).run("");

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err()).startsWith("Usage: charline [OPTIONS] [COMMAND]");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          pathc add | There is no command "pathc"; did you mean patch? See `charline --help`.
          patch | `charline patch` needs a second word: add, read, show, amend or void.
          patch ad | There is no command "ad"; did you mean add? See `charline patch --help`.
          patch add --hnad 3 | There is no option --hnad here; did you mean --hand? See `charline patch add --help`.
          patch add --hand | --hand needs a value after it. See `charline patch add --help`.
          rig show | NAME is missing. See `charline rig show --help`.
          board show wall north | "north" is one word too many; put quotes around words that belong together. See `charline board show --help`.
          """)
  void what_is_not_understood_is_answered_with_the_nearest_and_the_way_to_help(
      String line, String sentence) {
    assertThat(new Shell(folder).run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
  }

  @Test
  void a_broken_log_is_refused_and_left_as_it_is() throws Exception {
    Path log = Files.writeString(folder.resolve("boathouse.db"), "not a log");
    Shell.Result result = new Shell(folder).run("rig list");

    assertThat(result.code()).isEqualTo(3);
    assertThat(result.out()).isEmpty();
    assertThat(result.err()).hasLineCount(1).doesNotContain("Exception");
    assertThat(log).hasContent("not a log");
  }

  @Test
  void a_trace_is_printed_only_when_asked_for() {
    Shell shell = new Shell(folder).set("CHARLINE_TRACE", "1");

    assertThat(shell.run("rig list").err()).contains("\tat charline.");
  }

  /** Command lines of a help text, continued lines joined. */
  private static List<String> examples(String help) {
    List<String> examples = new ArrayList<>();
    help.replaceAll("\\\\\n\\s+", "")
        .lines()
        .map(String::strip)
        .filter(line -> line.startsWith("charline "))
        .forEach(examples::add);
    assertThat(examples).isNotEmpty();
    return examples;
  }

  private static Set<String> options(CommandLine line) {
    return line.getCommandSpec().optionsMap().keySet();
  }

  private static CommandLine line(List<String> words) {
    CommandLine line = Commands.lineFor(words.toArray(String[]::new), desk());
    for (String word : words) {
      line = line.getSubcommands().get(word);
    }
    return line;
  }

  private static CommandContext desk() {
    PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
    return new CommandContext(Asker.NOBODY, nowhere, nowhere, Map.of(), Clock.systemUTC());
  }
}
