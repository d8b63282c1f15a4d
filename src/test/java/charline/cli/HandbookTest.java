package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class HandbookTest {
  @Test
  void the_manual_shows_the_help_of_every_command() {
    String plain = Handbook.manual().replace("\\-", "-");
    for (String command : Commands.all()) {
      assertThat(plain).contains(".SS charline " + command + "\n");
      assertThat(plain).contains("Usage: charline " + command);
    }
    assertThat(plain.lines().filter(line -> line.startsWith(".")))
        .as("no line of help is taken for a macro")
        .allMatch(line -> line.matches("\\.(TH|SH|SS|TP|B|BR|I|nf|fi)( .*)?"));
  }

  @Test
  void the_completion_knows_every_command() {
    String script = Handbook.completion("bash");
    assertThat(script).contains("complete -F _charline charline");
    Commands.all().stream()
        .flatMap(command -> Arrays.stream(command.split(" ")))
        .forEach(word -> assertThat(script).contains(word));
    assertThat(script).contains("--hand", "--outcome", "--json");
    assertThat(script)
        .contains("pulsed|cw", "clean|tint|char|residue", "here|there", "offcut|piece");
  }
}
