package charline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the documents name is there: files, folders, classes and their members, Maven's goals. */
class DocumentsTest {
  private static final Pattern FENCED = Pattern.compile("(?s)```.*?```");
  private static final Pattern CODE = Pattern.compile("`([^`]+)`");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)\\)");
  private static final Pattern FILE =
      Pattern.compile("[\\w./-]+\\.(java|sql|md|xml|csv|html|png|pdf|svg|txt|R|jte)");
  private static final Pattern FOLDER =
      Pattern.compile("\\.?[\\w-]+(/[\\w.-]+)+/?|db|src|reports|sample-trials");
  private static final Pattern TYPE =
      Pattern.compile("([A-Z][a-z]+(?:[A-Z0-9][a-z0-9]*)+)(?:\\.(\\w+))?");
  private static final Pattern GOAL = Pattern.compile("exec:java@([\\w-]+)");
  private static final Pattern PROFILES = Pattern.compile("-P([\\w,-]+)");

  /** Made by a build, or of another machine. */
  private static final Pattern NOT_KEPT =
      Pattern.compile("target/.*|charline/log\\.db|list\\.html");

  private static List<String> tree;

  @BeforeAll
  static void look() throws IOException {
    try (Stream<Path> all = Files.walk(Path.of(""))) {
      tree =
          all.map(p -> p.toString().replace('\\', '/'))
              .filter(p -> !p.isEmpty() && !p.startsWith("target") && !p.startsWith(".git/"))
              .toList();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"README.md", "DEVELOPERS.md", "sample-trials/README.md"})
  void files_and_folders_that_a_document_names_are_there(String document) throws IOException {
    List<String> named =
        codes(document)
            .filter(c -> FILE.matcher(c).matches() || FOLDER.matcher(c).matches())
            .filter(c -> !NOT_KEPT.matcher(c).matches())
            .toList();

    assertThat(named).isNotEmpty().allSatisfy(name -> assertThat(found(name)).as(name).isTrue());
  }

  @ParameterizedTest
  @ValueSource(strings = {"README.md", "DEVELOPERS.md"})
  void what_a_document_links_to_is_there(String document) throws IOException {
    assertThat(matches(LINK, text(document)).map(m -> m.group(1)))
        .allSatisfy(target -> assertThat(Path.of(target)).exists());
  }

  @ParameterizedTest
  @ValueSource(strings = {"DEVELOPERS.md", "sample-trials/README.md"})
  void types_and_members_that_a_document_names_are_there(String document) throws IOException {
    List<MatchResult> named =
        codes(document)
            .map(TYPE::matcher)
            .filter(m -> m.matches())
            .map(m -> m.toMatchResult())
            .toList();

    assertThat(named).isNotEmpty();
    for (MatchResult type : named) {
      String file = "/" + type.group(1) + ".java";
      List<String> sources = tree.stream().filter(p -> p.endsWith(file)).toList();
      assertThat(sources).as(type.group()).isNotEmpty();
      if (type.group(2) != null) {
        assertThat(Files.readString(Path.of(sources.get(0))))
            .containsPattern("\\b" + type.group(2) + "\\b");
      }
    }
  }

  @Test
  void goals_and_profiles_of_maven_that_the_documents_name_are_in_its_file() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    String words = text("README.md") + text("DEVELOPERS.md");
    List<String> ids =
        Stream.concat(
                matches(GOAL, words).map(m -> m.group(1)),
                matches(PROFILES, words).flatMap(m -> Stream.of(m.group(1).split(","))))
            .distinct()
            .toList();

    assertThat(ids)
        .isNotEmpty()
        .allSatisfy(id -> assertThat(pom).contains("<id>%s</id>".formatted(id)));
  }

  /**
   * From the root, or as the end of a path: {@code model/Prior.java} is enough; dots stand for any
   * letters.
   */
  private static boolean found(String name) {
    Pattern end =
        Pattern.compile(
            "(.*/)?"
                + Stream.of(name.replaceAll("/$", "").split("\\.\\.\\."))
                    .map(Pattern::quote)
                    .collect(Collectors.joining("[^/]*")));
    return tree.stream().anyMatch(p -> end.matcher(p).matches());
  }

  private static Stream<String> codes(String document) throws IOException {
    return matches(CODE, FENCED.matcher(text(document)).replaceAll(""))
        .map(m -> m.group(1).replaceAll("\\s+", " "));
  }

  private static Stream<MatchResult> matches(Pattern pattern, String text) {
    return pattern.matcher(text).results();
  }

  private static String text(String document) throws IOException {
    return Files.readString(Path.of(document));
  }
}
