package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.BuiltJar;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whole visits, played on the built jar. A script is a text file: {@code $ command}, then what it
 * prints (answers first, then refusals), then {@code ? code} where the code is not 0. Lines that
 * begin with {@code #} are remarks; {@code ...} at the end of a line stands for anything, and alone
 * in a line for any lines. Each script starts in a folder of its own, without a log.
 */
class CliJourneyTest {
  private static final Path JOURNEYS = Path.of("src/test/resources/journeys");
  private static final Path SAMPLES = Path.of("sample-trials").toAbsolutePath();

  @TempDir Path folder;

  @TestFactory
  Stream<DynamicTest> every_script_plays_as_written() throws IOException {
    List<Path> scripts;
    try (Stream<Path> files = Files.list(JOURNEYS)) {
      scripts = files.filter(f -> f.toString().endsWith(".txt")).sorted().toList();
    }
    assertThat(scripts).isNotEmpty();
    return scripts.stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> play(file.getFileName().toString(), Files.readAllLines(file))));
  }

  /** The README's visit: what stands between its console fences. */
  @Test
  void the_visit_in_the_readme_plays_as_written() throws IOException {
    List<String> visit =
        Files.readAllLines(Path.of("README.md")).stream()
            .dropWhile(line -> !line.equals("```console"))
            .skip(1)
            .takeWhile(line -> !line.equals("```"))
            .toList();
    assertThat(visit).as("the README shows a visit").isNotEmpty();
    play("readme", visit);
  }

  /** The script by which the README makes the jar a command: for short work and for long. */
  @ParameterizedTest
  @ValueSource(strings = {"find clean latex", "window --all"})
  void the_script_in_the_readme_runs_the_jar(String words) throws Exception {
    String script =
        Files.readAllLines(Path.of("README.md")).stream()
            .dropWhile(line -> !line.equals("```sh"))
            .skip(1)
            .takeWhile(line -> !line.equals("```"))
            .map(line -> line.replace("/path/to/charline.jar", BuiltJar.path().toString()))
            .collect(Collectors.joining("\n", "", "\n"));
    Path place = Files.createDirectories(folder.resolve("script"));
    Path command = Files.writeString(place.resolve("charline"), script);
    assertThat(command.toFile().setExecutable(true)).isTrue();
    copySamples(Files.createDirectories(place.resolve("sample-trials")));
    Played brought =
        run("charline import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv", place);
    assertThat(brought.code()).as(brought.text()).isZero();
    Played asked = run("charline " + words, place);
    ProcessBuilder typed =
        new ProcessBuilder(
            Stream.concat(Stream.of(command.toString()), Stream.of(words.split(" "))).toList());
    typed
        .environment()
        .compute(
            "PATH", (name, old) -> Path.of(System.getProperty("java.home"), "bin") + ":" + old);
    assertThat(played(typed, place)).isEqualTo(asked);
  }

  /** One command of a script with what it should print and its exit code. */
  private record Step(String command, List<String> printed, int code) {}

  private void play(String name, List<String> script) throws IOException {
    Path place = Files.createDirectories(folder.resolve(name));
    copySamples(Files.createDirectories(place.resolve("sample-trials")));
    for (Step step : steps(script)) {
      Played played = run(step.command(), place);
      assertThat(played.text()).as("$ " + step.command()).matches(pattern(step.printed()));
      assertThat(played.code()).as("exit code of $ " + step.command()).isEqualTo(step.code());
    }
  }

  private static void copySamples(Path place) throws IOException {
    try (Stream<Path> samples = Files.list(SAMPLES)) {
      for (Path sample : samples.toList()) {
        Files.copy(sample, place.resolve(sample.getFileName()));
      }
    }
  }

  private static List<Step> steps(List<String> lines) {
    List<Step> steps = new ArrayList<>();
    String command = null;
    List<String> printed = new ArrayList<>();
    int code = 0;
    for (String line : lines) {
      if (line.startsWith("$ ")) {
        if (command != null) {
          steps.add(new Step(command, printed, code));
        }
        command = line.substring(2);
        printed = new ArrayList<>();
        code = 0;
      } else if (line.startsWith("? ")) {
        code = Integer.parseInt(line.substring(2).strip());
      } else if (!line.startsWith("#")) {
        printed.add(line);
      }
    }
    assertThat(command).as("a script has a command").isNotNull();
    steps.add(new Step(command, printed, code));
    return steps;
  }

  private static Pattern pattern(List<String> printed) {
    StringBuilder regex = new StringBuilder("(?s)");
    for (String line : printed) {
      if (line.strip().equals("...")) {
        regex.append(".*?");
      } else if (line.endsWith("...")) {
        regex.append(Pattern.quote(line.substring(0, line.length() - 3))).append("[^\n]*\n");
      } else if (!line.isBlank()) {
        regex.append(Pattern.quote(line)).append("\n");
      }
    }
    return Pattern.compile(regex.toString());
  }

  private record Played(int code, String text) {}

  /** Blank lines are left out on both sides, so that a script may be spaced for reading. */
  private static Played run(String command, Path place) throws IOException {
    List<String> typed = Shell.words(command);
    assertThat(typed.get(0)).as("a script runs charline alone").isEqualTo("charline");
    return played(new ProcessBuilder(BuiltJar.command(typed.subList(1, typed.size()))), place);
  }

  private static Played played(ProcessBuilder builder, Path place) throws IOException {
    Map<String, String> env = builder.directory(place.toFile()).environment();
    env.put("CHARLINE_LOG", place.resolve("log.db").toString());
    env.put("CHARLINE_BY", "Ada");
    env.put("TZ", "UTC");
    Path err = Files.createTempFile(place, "err", ".txt");
    Process process = builder.redirectError(err.toFile()).start();
    process.getOutputStream().close();
    String out = text(process.getInputStream());
    try {
      int code = process.waitFor();
      String all = out + Files.readString(err);
      Files.delete(err);
      return new Played(
          code,
          all.lines().filter(l -> !l.isBlank()).map(l -> l + "\n").reduce("", String::concat));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new UncheckedIOException(new IOException(e));
    }
  }

  private static String text(InputStream stream) throws IOException {
    return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
  }
}
