package charline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Only the command line names its commands and options: whoever holds a paper or taps a page has
 * none of them.
 */
class FaceWordsTest {
  private static final Pattern NAMED =
      Pattern.compile("\"[^\"]*(`charline |(?<![\\w-])--[a-z])|<b>(charline|patch|--)[ a-z]");

  @Test
  void no_command_or_option_is_named_below_the_command_line() throws IOException {
    assertThat(Stream.concat(named("src/main/java"), named("src/main/jte")).toList()).isEmpty();
    assertThat(named("src/main/jte-bench").toList()).isEmpty();
  }

  private static Stream<String> named(String folder) throws IOException {
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      List<Path> all =
          files
              .filter(Files::isRegularFile)
              .filter(f -> !f.startsWith("src/main/java/charline/cli"))
              // It lists what only the command line does.
              .filter(f -> !f.endsWith("log.jte"))
              .toList();
      assertThat(all).isNotEmpty();
      return all.stream().flatMap(FaceWordsTest::namedIn);
    }
  }

  private static Stream<String> namedIn(Path file) {
    try {
      return Files.readAllLines(file).stream()
          .filter(line -> !line.strip().startsWith("*") && !line.strip().startsWith("/"))
          .filter(line -> NAMED.matcher(line).find())
          .map(line -> file + ": " + line.strip());
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
