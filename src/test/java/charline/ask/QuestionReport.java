package charline.ask;

import charline.ask.Corpus.Kind;
import charline.ask.Corpus.Outcome;
import charline.log.Logbook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Writes {@code reports/questions.md}: {@code mvn -q test-compile exec:java@questions}. */
public final class QuestionReport {
  private static final Path REPORT = Path.of("reports/questions.md");

  private static final String HEAD =
      """
      # Questions in plain words

      Written by `mvn -q test-compile exec:java@questions`; do not edit it by hand.

      Questions of seven tables in `src/test/resources/ask` are put to a log of %d patches: the sample trials and 52 more of the
      same boathouse. The patches that answer a question were written down as a rule by a person and are worked out in Java from
      the patches themselves (`Expectation`), not from the grammar. Right is the same set of patches, or a refusal where one must
      come; wrong is another set, whatever the head line says. Every answer begins with how the question was read.

      `questions.txt` grew with the grammar. The other tables, and 100 rows that are in `questions.txt` by now, were written
      before the grammar was tried on them, in other words than those before. What they showed was mended afterwards, so that
      the shares at the end are those of questions seen by now. When they were put for the first time:

      | table | questions | right | refused | wrong |
      | --- | ---: | ---: | ---: | ---: |
      | 100 rows of `questions.txt` | 100 | 75 %% | 15 %% | 10 %% |
      | `questions-unseen.txt` | 100 | 83 %% | 6 %% | 11 %% |
      | `questions-third.txt` | 107 | 93.5 %% | 0.9 %% | 5.6 %% |
      | `questions-fourth.txt` | 100 | 81 %% | 14 %% | 5 %% |
      | `questions-fifth.txt` | 100 | 85 %% | 10 %% | 5 %% |
      | `questions-sixth.txt` | 100 | 70 %% | 23 %% | 7 %% |
      | `questions-seventh.txt` | 100 | 95 %% | 3 %% | 2 %% |

      In each of the first three, up to eight of those not right were faults of the table; they were written by the author of the
      grammar. The fourth is somebody else's, who had seen neither the grammar nor a table. Eight of its questions have a mistyped
      word on purpose and want it read as it was meant; charline offers the right word instead and reads nothing that was not
      typed. Of the 92 others, 81 were right (88 %%), 6 refused and 5 wrong; none of those was a fault of the table. The fifth,
      the sixth and the seventh are of three more strangers, each put once the table before had been learned from. Courtesies and
      words run together by slashes failed in the fifth. In the sixth a quarter of the questions come after a sentence of speech ("I
      was off sick last week, what did Mats burn last week?"): of these 3 of 25 were read, of the others 67 of 75 (89 %%). Such a
      sentence is now passed over, which the answer says, unless it names what the question does not. The seventh is a month of a
      mixed crew's questions, most of them plain; both of its wrong answers said at their head how they were read.

      Now:

      """;

  private QuestionReport() {}

  public static void main(String[] args) throws IOException {
    Path folder = Files.createTempDirectory("asked");
    try (Logbook log = AskedLog.in(folder)) {
      StringBuilder text = new StringBuilder(HEAD.formatted(AskedLog.everything(log).size()));
      text.append("| table | manner | questions | right | refused | wrong |\n");
      text.append("| --- | --- | ---: | ---: | ---: | ---: |\n");
      StringBuilder failures = new StringBuilder();
      for (String table :
          List.of(
              "questions.txt",
              "questions-unseen.txt",
              "questions-third.txt",
              "questions-fourth.txt",
              "questions-fifth.txt",
              "questions-sixth.txt",
              "questions-seventh.txt")) {
        List<Outcome> outcomes = Corpus.ask(table, log);
        Map<String, List<Outcome>> manners =
            outcomes.stream()
                .collect(Collectors.groupingBy(Outcome::manner, TreeMap::new, Collectors.toList()));
        manners.forEach((manner, some) -> text.append(row(table, manner, some)));
        text.append(row(table, "all", outcomes));
        outcomes.stream()
            .filter(o -> o.kind() != Kind.RIGHT)
            .forEach(
                o ->
                    failures.append(
                        "- %s: \"%s\" (wanted: `%s`). %s%n"
                            .formatted(
                                o.kind().name().toLowerCase(Locale.ROOT),
                                o.question(),
                                o.rule(),
                                o.said())));
      }
      if (failures.length() > 0) {
        text.append("\n## Not right\n\n").append(failures);
      }
      Files.writeString(REPORT, text);
    }
  }

  private static String row(String table, String manner, List<Outcome> outcomes) {
    return "| %s | %s | %d | %s | %s | %s |%n"
        .formatted(
            table,
            manner,
            outcomes.size(),
            percent(outcomes, Kind.RIGHT),
            percent(outcomes, Kind.REFUSED),
            percent(outcomes, Kind.WRONG));
  }

  private static String percent(List<Outcome> outcomes, Kind kind) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * Corpus.share(outcomes, kind));
  }
}
