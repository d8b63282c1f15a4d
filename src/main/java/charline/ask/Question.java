package charline.ask;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Condition;
import charline.log.search.Search;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A question in plain words, such as {@code clean latex over pine last month}, as it was read.
 *
 * @param condition which patches are wanted
 * @param ranking in which order, and how many
 * @param purpose what is wanted of them
 * @param remarks how words were read that could have been read otherwise, in full sentences
 */
public record Question(
    Condition condition, Optional<Ranking> ranking, Purpose purpose, List<String> remarks) {
  private static final int LONGEST = 1000;

  /** What is wanted of the patches. */
  public enum Purpose {
    /** To see them. */
    LIST,
    /** Their number. */
    COUNT,
    /** The best setting. */
    BEST
  }

  /** Asks for everything. */
  public static final Question EVERYTHING =
      new Question(Condition.EVERY, Optional.empty(), Purpose.LIST, List.of());

  public Question {
    remarks = List.copyOf(remarks);
  }

  /**
   * What a question means.
   *
   * @param words as typed, in any split: {@code ["clear coat", "pine"]} and {@code ["clear",
   *     "coat", "pine"]} mean the same
   * @param vocabulary the words of the log
   * @param asker who asks, for "my" and "by me"; empty if unknown
   * @param clock today, and whose calendar
   * @throws Refusal naming the first word it does not know, and the nearest that it does
   */
  public static Question parse(
      List<String> words, Vocabulary vocabulary, Optional<String> asker, Clock clock) {
    String text = String.join(" ", words);
    if (text.length() > LONGEST) {
      throw Refusal.usage(
          "A question must be at most %d characters long, not %d; ask for less at once."
              .formatted(LONGEST, text.length()));
    }
    vocabulary.meetNames(text);
    Optional<Preamble> spoken = Preamble.of(text);
    if (spoken.isEmpty()) {
      return new QuestionReader(Splitting.of(text), vocabulary, asker, clock).read();
    }
    return parse(text, spoken.get(), vocabulary, asker, clock);
  }

  /**
   * A question after a sentence of speech, which is passed over and said so. Where that sentence
   * names what the question does not, nobody can tell whether it narrows the question.
   */
  private static Question parse(
      String text, Preamble spoken, Vocabulary vocabulary, Optional<String> asker, Clock clock) {
    Optional<String> named =
        new QuestionReader(Splitting.of(spoken.told()), vocabulary, asker, clock)
            .namedBeside(spoken.asked());
    if (named.isPresent() && spoken.plainly()) {
      throw Refusal.usage(
          "I cannot tell whether \"%s\" narrows the question; ask for the patches alone."
              .formatted(named.get()));
    }
    if (named.isPresent()) {
      return new QuestionReader(Splitting.of(text), vocabulary, asker, clock).read();
    }
    Question asked =
        new QuestionReader(Splitting.of(spoken.asked()), vocabulary, asker, clock).read();
    if (asked.condition().equals(Condition.EVERY)) {
      return new QuestionReader(Splitting.of(text), vocabulary, asker, clock).read();
    }
    return asked.about(asked.condition(), "Passed over: \"%s\".".formatted(spoken.told().strip()));
  }

  /** The same, narrowed by another condition. */
  public Question narrowed(Condition other) {
    return other.equals(Condition.EVERY)
        ? this
        : new Question(condition.and(other), ranking, purpose, remarks);
  }

  /** The same in that order. */
  public Question ranked(Ranking other) {
    return new Question(condition, Optional.of(other), purpose, remarks);
  }

  /** The same about other patches, and what is to be said of that. */
  public Question about(Condition other, String remark) {
    List<String> all = new ArrayList<>(remarks);
    all.add(remark);
    return new Question(other, ranking, purpose, all);
  }

  /** The patches that answer it, in the order that was asked for. */
  public List<PatchEntry> patches(Logbook log) {
    return ranked(Search.patches(log, condition));
  }

  /**
   * The same among patches that were read from the log before.
   *
   * @param entries all that count, oldest first
   */
  public List<PatchEntry> among(List<PatchEntry> entries, Logbook log) {
    return ranked(Search.among(entries, log, condition));
  }

  private List<PatchEntry> ranked(List<PatchEntry> found) {
    return ranking.map(r -> r.of(found)).orElse(found);
  }
}
