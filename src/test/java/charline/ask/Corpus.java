package charline.ask;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import charline.wording.QuestionText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Questions of a table, put to a log. */
final class Corpus {
  static final Path FOLDER = Path.of("src/test/resources/ask");

  /** What became of a question. */
  enum Kind {
    RIGHT,
    REFUSED,
    WRONG
  }

  /**
   * A question and what became of it.
   *
   * @param manner whose manner of speaking
   * @param said what the program said: how it read the question, or the refusal
   * @param expected the codes that answer, as a person wrote them down by a rule
   * @param found the codes that came
   */
  record Outcome(
      String manner,
      String question,
      String rule,
      Kind kind,
      String said,
      Set<String> expected,
      Set<String> found) {}

  private Corpus() {}

  static List<Outcome> ask(String table, Logbook log) {
    Expectation expectation = new Expectation(log.reference().woods());
    List<PatchEntry> everything = AskedLog.everything(log);
    return lines(table).stream().map(l -> asked(l, log, expectation, everything)).toList();
  }

  private static List<String> lines(String table) {
    try {
      return Files.readAllLines(FOLDER.resolve(table)).stream()
          .filter(l -> !l.isBlank() && !l.startsWith("#"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Outcome asked(
      String line, Logbook log, Expectation expectation, List<PatchEntry> everything) {
    String[] parts = line.split("\\s+\\|\\s+", 3);
    String rule = parts[2].strip();
    boolean mustRefuse = rule.equals("refused");
    Set<String> expected = mustRefuse ? Set.of() : expectation.codes(rule, everything);
    try {
      Question question = parse(parts[1], log);
      List<PatchEntry> answer = question.patches(log);
      Set<String> found =
          answer.stream().map(e -> e.patch().code()).collect(Collectors.toCollection(TreeSet::new));
      boolean right = !mustRefuse && found.equals(expected);
      return new Outcome(
          parts[0],
          parts[1],
          rule,
          right ? Kind.RIGHT : Kind.WRONG,
          QuestionText.sentences(question),
          expected,
          found);
    } catch (Refusal e) {
      return new Outcome(
          parts[0],
          parts[1],
          rule,
          mustRefuse ? Kind.RIGHT : Kind.REFUSED,
          e.getMessage(),
          expected,
          Set.of());
    }
  }

  static Question parse(String question, Logbook log) {
    return Question.parse(
        List.of(question), Vocabulary.of(log), Optional.of(AskedLog.ASKER), AskedLog.CLOCK);
  }

  static double share(List<Outcome> outcomes, Kind kind) {
    return (double) outcomes.stream().filter(o -> o.kind() == kind).count() / outcomes.size();
  }

  /** Prints what was not right, for whoever works on the grammar. */
  public static void main(String[] tables) throws IOException {
    Path folder = Files.createTempDirectory("asked");
    try (Logbook log = AskedLog.in(folder)) {
      for (String table : tables) {
        List<Outcome> outcomes = ask(table, log);
        for (Outcome o : outcomes) {
          if (o.kind() != Kind.RIGHT || o.expected().isEmpty() && !o.rule().equals("refused")) {
            System.out.printf(
                "%s | %s | %s%n     %s%n     missing %s, too many %s%n",
                o.kind(),
                o.question(),
                o.rule(),
                o.said(),
                minus(o.expected(), o.found()),
                minus(o.found(), o.expected()));
          }
        }
        System.out.printf(
            "%s: %d questions, right %.3f, refused %.3f, wrong %.3f%n",
            table,
            outcomes.size(),
            share(outcomes, Kind.RIGHT),
            share(outcomes, Kind.REFUSED),
            share(outcomes, Kind.WRONG));
      }
    }
  }

  static Set<String> minus(Set<String> a, Set<String> b) {
    Set<String> rest = new TreeSet<>(a);
    rest.removeAll(b);
    return rest;
  }
}
