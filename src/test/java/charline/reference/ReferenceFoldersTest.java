package charline.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Orphans fail: a reference that nothing is compared with proves nothing. */
class ReferenceFoldersTest {
  private static final Path FOLDERS = Path.of("src/test/resources/reference");

  /** The folder of scripts. */
  private static final String SCRIPTS = "r";

  static Stream<String> folders() throws IOException {
    try (Stream<Path> all = Files.list(FOLDERS)) {
      return all
          .filter(Files::isDirectory)
          .map(path -> path.getFileName().toString())
          .filter(name -> !name.equals(SCRIPTS))
          .sorted()
          .toList()
          .stream();
    }
  }

  @Test
  void there_are_reference_folders() throws IOException {
    assertThat(folders()).hasSizeGreaterThanOrEqualTo(16);
  }

  @ParameterizedTest
  @MethodSource("folders")
  void every_folder_names_its_source(String folder) {
    assertThat(FOLDERS.resolve(folder).resolve("SOURCE.md")).isNotEmptyFile();
  }

  @ParameterizedTest
  @MethodSource("folders")
  void every_folder_is_named_by_a_test(String folder) throws IOException {
    assertThat(testsNaming(folder)).as("tests that use reference/" + folder).isNotEmpty();
  }

  @ParameterizedTest
  @MethodSource("folders")
  void every_fit_is_named_by_a_test_of_its_folder(String folder) throws IOException {
    if (Files.notExists(FOLDERS.resolve(folder).resolve("case.json"))) {
      return; // a folder of another form; its own test must name it, see above
    }
    List<String> sources = testsNaming(folder);
    for (String fit : ReferenceCase.load(folder).fitIds()) {
      assertThat(sources).as("tests of reference/" + folder).anyMatch(text -> text.contains(fit));
    }
  }

  private static List<String> testsNaming(String folder) throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      return files
          .filter(path -> path.toString().endsWith("Test.java"))
          .map(ReferenceFoldersTest::read)
          .filter(text -> text.contains(folder))
          .toList();
    }
  }

  private static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
