package charline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the installed program's launcher hands to Java, seen by a stand-in that writes it down. */
class LauncherTest {
  private static final String FIRST_COMPILER = "-XX:TieredStopAtLevel=1";
  private static final String BOTH_COMPILERS = "-XX:TieredStopAtLevel=4";
  private static final long LARGE_BYTES = 33L << 20;

  @TempDir Path folder;
  private Path program;

  @BeforeEach
  void install() throws IOException {
    assumeTrue(Files.exists(Path.of("/bin/sh")), "The launcher is a script for sh.");
    Path home = folder.resolve("a folder with spaces");
    program = home.resolve("bin/charline");
    Path java = home.resolve("runtime/bin/java");
    Files.createDirectories(program.getParent());
    Files.createDirectories(java.getParent());
    Files.createDirectories(home.resolve("lib"));
    Files.createFile(home.resolve("lib/charline.jar"));
    Files.copy(Path.of("src/dist/charline"), program, StandardCopyOption.COPY_ATTRIBUTES);
    Files.writeString(java, "#!/bin/sh\nprintf '%s\\n' \"$@\"\n");
    assertThat(java.toFile().setExecutable(true)).isTrue();
    assertThat(program.toFile().setExecutable(true)).isTrue();
  }

  private List<String> handed(Map<String, String> environment, String... words) throws Exception {
    List<String> line = new ArrayList<>(List.of(program.toString()));
    line.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(line).redirectErrorStream(true);
    builder.environment().remove("CHARLINE_LOG");
    builder.environment().remove("XDG_DATA_HOME");
    builder.environment().put("HOME", folder.toString());
    builder.environment().putAll(environment);
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said.lines().toList();
  }

  private Path log(String name, long bytes) throws IOException {
    Path log = folder.resolve(name);
    Files.createDirectories(log.getParent());
    try (RandomAccessFile file = new RandomAccessFile(log.toFile(), "rw")) {
      file.setLength(bytes);
    }
    return log;
  }

  @ParameterizedTest
  @CsvSource({
    "patch, recording",
    "p, recording",
    "find, recording",
    "window, asking",
    "bench, asking"
  })
  void a_command_starts_from_the_archive_that_holds_little_else(String command, String archive)
      throws Exception {
    Path library = program.resolveSibling("../lib").normalize();
    assertThat(handed(Map.of(), command))
        .contains("-XX:SharedArchiveFile=" + library.resolve("charline.jsa"));
    Files.createFile(library.resolve("recording.aot"));
    Files.createFile(library.resolve("asking.aot"));
    assertThat(handed(Map.of(), command))
        .contains("-XX:AOTCache=" + library.resolve(archive + ".aot"))
        .noneMatch(option -> option.startsWith("-XX:SharedArchiveFile"));
  }

  /** The page calls by name all day, and an import for each patch; Java 17 compiles late itself. */
  @Test
  void calls_by_name_are_compiled_only_where_they_are_many() throws Exception {
    String reflection = "-Djdk.reflect.useNativeAccessorOnly=true";
    Path library = program.resolveSibling("../lib").normalize();
    assertThat(handed(Map.of(), "window", "latex")).doesNotContain(reflection);
    Files.createFile(library.resolve("recording.aot"));
    Files.createFile(library.resolve("asking.aot"));
    assertThat(handed(Map.of(), "window", "latex")).contains(reflection);
    assertThat(handed(Map.of(), "patch", "add")).contains(reflection);
    assertThat(handed(Map.of(), "bench")).doesNotContain(reflection);
    assertThat(handed(Map.of(), "import", "a.csv")).doesNotContain(reflection);
  }

  @Test
  void what_was_typed_comes_last_and_as_it_was_typed() throws Exception {
    List<String> handed =
        handed(Map.of(), "patch", "add", "--note", "two  spaces, a \"quote\" and $HOME", "");
    assertThat(handed)
        .endsWith(
            "charline.cli.Main",
            "patch",
            "add",
            "--note",
            "two  spaces, a \"quote\" and $HOME",
            "");
  }

  @ParameterizedTest
  @ValueSource(strings = {"patch", "p", "find", "window", "next", "check"})
  void a_small_log_is_answered_by_the_first_compiler(String command) throws Exception {
    Path small = log("small.db", 1 << 20);
    assertThat(handed(Map.of(), "--log", small.toString(), command))
        .contains(FIRST_COMPILER)
        .doesNotContain(BOTH_COMPILERS);
  }

  @Test
  void a_log_that_is_not_there_is_a_small_one() throws Exception {
    assertThat(handed(Map.of(), "window", "latex", "pine")).contains(FIRST_COMPILER);
    assertThat(handed(Map.of())).contains(FIRST_COMPILER);
  }

  @Test
  void a_large_log_pays_for_both_compilers_however_it_is_named() throws Exception {
    Path large = log("large log.db", LARGE_BYTES);
    assertThat(handed(Map.of(), "--log", large.toString(), "window", "latex"))
        .contains(BOTH_COMPILERS);
    assertThat(handed(Map.of(), "--log=" + large, "window", "latex")).contains(BOTH_COMPILERS);
    assertThat(handed(Map.of(), "window", "latex", "--log", large.toString()))
        .contains(BOTH_COMPILERS, "-Xmx433m");
    assertThat(handed(Map.of(), "window", "latex", "--log=" + large)).contains(BOTH_COMPILERS);
    assertThat(handed(Map.of("CHARLINE_LOG", large.toString()), "window", "latex"))
        .contains(BOTH_COMPILERS);
  }

  @Test
  void a_large_log_in_its_usual_place_is_found() throws Exception {
    log(".local/share/charline/log.db", LARGE_BYTES);
    assertThat(handed(Map.of(), "window", "latex")).contains(BOTH_COMPILERS);
    log("data/charline/log.db", 1);
    assertThat(
            handed(Map.of("XDG_DATA_HOME", folder.resolve("data").toString()), "window", "latex"))
        .contains(FIRST_COMPILER);
  }

  @ParameterizedTest
  @ValueSource(strings = {"patch", "find"})
  void what_does_little_for_each_patch_waits_for_no_second_compiler(String command)
      throws Exception {
    Path large = log("large.db", LARGE_BYTES);
    assertThat(handed(Map.of(), "--log", large.toString(), command)).contains(FIRST_COMPILER);
  }

  @ParameterizedTest
  @ValueSource(strings = {"import", "merge", "bench"})
  void long_work_has_both_compilers(String command) throws Exception {
    assertThat(handed(Map.of(), command)).contains(BOTH_COMPILERS);
  }

  @Test
  void every_window_of_a_log_has_both_compilers_and_one_window_has_not() throws Exception {
    String small = log("small.db", 1 << 20).toString();
    assertThat(handed(Map.of(), "--log", small, "window", "--all", "--json"))
        .contains(BOTH_COMPILERS);
    assertThat(handed(Map.of(), "--log", small, "window", "latex", "pine"))
        .contains(FIRST_COMPILER);
  }

  @ParameterizedTest
  @CsvSource({"bench, 512, 545", "window, 400, 433"})
  void the_page_and_windows_have_the_memory_that_a_log_of_this_size_may_need(
      String command, int none, int large) throws Exception {
    String missing = folder.resolve("none.db").toString();
    assertThat(handed(Map.of(), "--log", missing, command)).contains("-Xmx" + none + "m");
    String log = log("large log.db", LARGE_BYTES).toString();
    assertThat(handed(Map.of(), "--log", log, command)).contains("-Xmx" + large + "m");
  }

  @Test
  void an_import_has_the_memory_that_its_sheets_may_need() throws Exception {
    Path log = log("some.db", 1 << 20);
    Path sheet = log("a sheet.csv", 33L << 20);
    Path other = log("another.csv", 30L << 20);
    assertThat(handed(Map.of(), "--log", log.toString(), "import", "--sure")).contains("-Xmx60m");
    assertThat(handed(Map.of(), "import", "--sure", sheet.toString(), other.toString()))
        .contains("-Xmx81m");
  }

  @ParameterizedTest
  @ValueSource(strings = {"patch", "find", "export", "check", "merge"})
  void other_work_has_the_memory_that_java_gives(String command) throws Exception {
    assertThat(handed(Map.of(), command)).noneMatch(word -> word.startsWith("-Xmx"));
  }
}
