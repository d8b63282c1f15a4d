package charline.ask;

import static org.assertj.core.api.Assertions.assertThat;

import charline.ask.Corpus.Kind;
import charline.ask.Corpus.Outcome;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Search;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Questions as people put them are answered with the patches that rules of their own find. */
class QuestionCorpusTest {
  @TempDir static Path folder;
  static Logbook log;
  static List<Outcome> asked;
  static List<Outcome> unseen;
  static List<Outcome> strange;

  @BeforeAll
  static void ask() {
    log = AskedLog.in(folder);
    asked = Corpus.ask("questions.txt", log);
    unseen =
        Stream.of("questions-unseen.txt", "questions-third.txt")
            .flatMap(table -> Corpus.ask(table, log).stream())
            .toList();
    strange = Corpus.ask("questions-fourth.txt", log);
  }

  @AfterAll
  static void close() {
    log.close();
  }

  @Test
  void questions_of_the_table_are_answered_right() {
    assertThat(asked).hasSizeGreaterThanOrEqualTo(300);
    assertThat(asked.stream().map(Outcome::question)).doesNotHaveDuplicates();
    assertThat(asked)
        .filteredOn(o -> o.kind() != Kind.RIGHT)
        .extracting(Outcome::question, Outcome::kind, Outcome::said)
        .isEmpty();
  }

  /** Eight of the hundred have a mistyped word, which is refused and offered as it was meant. */
  @Test
  void questions_of_somebody_else_are_right_or_name_a_mistyped_word() {
    assertThat(strange).hasSize(100);
    assertThat(strange).filteredOn(o -> o.kind() == Kind.WRONG).isEmpty();
    assertThat(strange)
        .filteredOn(o -> o.kind() == Kind.REFUSED)
        .hasSizeLessThanOrEqualTo(8)
        .allSatisfy(o -> assertThat(o.said()).contains("; nearest words"))
        .extracting(Outcome::said)
        .allMatch(
            said ->
                Stream.of(
                        "teak",
                        "shellac",
                        "which",
                        "varnish",
                        "yesterday",
                        "plywood",
                        "lacquer",
                        "residue")
                    .anyMatch(meant -> said.matches(".*: (.*, )?" + meant + "[.,].*")));
  }

  /**
   * In the fifth table four words are mistyped; in the sixth a quarter of the questions come after
   * a sentence of speech.
   */
  @ParameterizedTest
  @CsvSource({
    "questions-fifth.txt, 0.95, 0.01",
    "questions-sixth.txt, 0.92, 0.02",
    "questions-seventh.txt, 0.97, 0.01"
  })
  void questions_of_more_strangers_are_mostly_right_and_hardly_wrong(
      String table, double right, double wrong) {
    List<Outcome> outcomes = Corpus.ask(table, log);
    assertThat(outcomes).hasSize(100);
    assertThat(Corpus.share(outcomes, Kind.RIGHT)).isGreaterThanOrEqualTo(right);
    assertThat(Corpus.share(outcomes, Kind.WRONG)).isLessThanOrEqualTo(wrong);
  }

  @Test
  void of_questions_written_down_before_they_were_tried_most_are_right_and_few_wrong() {
    assertThat(unseen).hasSizeGreaterThanOrEqualTo(200);
    assertThat(Corpus.share(unseen, Kind.RIGHT)).isGreaterThanOrEqualTo(0.98);
    assertThat(Corpus.share(unseen, Kind.WRONG)).isLessThanOrEqualTo(0.01);
  }

  /** A rule that finds all or nothing tells little of how a question was read. */
  @Test
  void most_expectations_tell_questions_apart() {
    long telling =
        asked.stream().filter(o -> !o.expected().isEmpty() && o.expected().size() < 150).count();
    assertThat(telling).isGreaterThan(asked.size() * 3L / 4);
  }

  /** What SQL lets through must hold all that meets a condition. */
  @Test
  void every_answer_is_what_looking_at_all_patches_gives() throws IOException {
    List<PatchEntry> everything = AskedLog.everything(log);
    for (String line : Files.readAllLines(Corpus.FOLDER.resolve("questions.txt"))) {
      String[] parts = line.split("\\s+\\|\\s+");
      if (line.startsWith("#") || parts.length < 3 || parts[2].equals("refused")) {
        continue;
      }
      Question question = Corpus.parse(parts[1], log);
      Set<String> searched = codes(Search.patches(log, question.condition()));
      Set<String> looked = codes(Search.among(everything, log, question.condition()));
      assertThat(searched).as(parts[1]).isEqualTo(looked);
    }
  }

  private static Set<String> codes(List<PatchEntry> entries) {
    return entries.stream().map(e -> e.patch().code()).collect(Collectors.toSet());
  }
}
