package charline.log.search;

import charline.log.Filter;
import charline.log.reference.Nearest;
import charline.log.reference.WordKey;
import charline.log.search.Vocabulary.Facet;
import charline.log.search.Vocabulary.Term;
import charline.refusal.Refusal;
import charline.trial.Mark;
import charline.trial.Outcome;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A question in plain words, such as {@code clean latex over pine last month}.
 *
 * <p>The longest run of words that the log knows is taken first ("clear coat" before "clear"), then
 * times. Words of one facet widen (pine oak: either), those of different facets narrow; marks must
 * all be there. A generic wood includes its species.
 */
public final class Question {
  private static final int LONGEST = 1000;

  private static final Set<String> CONNECTING =
      Set.of(
          "a",
          "all",
          "an",
          "and",
          "any",
          "are",
          "at",
          "be",
          "been",
          "board",
          "boards",
          "by",
          "did",
          "do",
          "every",
          "find",
          "finish",
          "finishes",
          "for",
          "from",
          "had",
          "has",
          "have",
          "how",
          "i",
          "in",
          "is",
          "it",
          "job",
          "list",
          "me",
          "my",
          "of",
          "off",
          "on",
          "onto",
          "or",
          "our",
          "over",
          "patch",
          "patches",
          "please",
          "rig",
          "rigs",
          "setting",
          "settings",
          "show",
          "that",
          "the",
          "to",
          "trial",
          "trials",
          "tried",
          "try",
          "us",
          "use",
          "used",
          "using",
          "was",
          "we",
          "were",
          "what",
          "when",
          "where",
          "which",
          "who",
          "with",
          "wood");
  private static final Set<String> TRIALS = Set.of("patch", "patches", "trial", "trials");
  private static final Set<String> DENYING = Set.of("no", "not", "without", "never", "except");

  private final List<String> words;
  private final Vocabulary vocabulary;
  private final TimePhrase times;
  private final Map<Facet, Set<String>> asked = new EnumMap<>(Facet.class);
  private Optional<OffsetDateTime> since = Optional.empty();
  private Optional<OffsetDateTime> until = Optional.empty();

  private Question(List<String> words, Vocabulary vocabulary, Clock clock) {
    this.words = words;
    this.vocabulary = vocabulary;
    times = new TimePhrase(clock);
  }

  /**
   * The filter that a question means.
   *
   * @param words as typed, in any split: {@code ["clear coat", "pine"]} and {@code ["clear",
   *     "coat", "pine"]} mean the same
   * @param vocabulary the words of the log
   * @param clock today, and whose calendar
   * @throws Refusal naming the first word it does not know, and the nearest that it does
   */
  public static Filter parse(List<String> words, Vocabulary vocabulary, Clock clock) {
    int letters = words.stream().mapToInt(String::length).sum();
    if (letters > LONGEST) {
      throw Refusal.usage(
          "A question must be at most %d characters long, not %d; ask for less at once."
              .formatted(LONGEST, letters));
    }
    List<String> split =
        words.stream()
            .flatMap(w -> Arrays.stream(w.strip().split("\\s+")))
            .map(w -> w.replaceAll("^[\"'(]+|[\"',;:.?!)]+$", ""))
            .filter(w -> !WordKey.key(w).isEmpty())
            .toList();
    vocabulary.meetNames(String.join(" ", split));
    return new Question(split, vocabulary, clock).filter();
  }

  private Filter filter() {
    List<String> lower = words.stream().map(w -> w.toLowerCase(Locale.ROOT)).toList();
    int at = 0;
    while (at < words.size()) {
      int taken = understood(lower, at);
      at = taken > 0 ? at + taken : fromTheStart();
    }
    if (since.isPresent() && until.isPresent() && !since.get().isBefore(until.get())) {
      throw Refusal.usage(
          "No time is both on or after %s and before %s; give one period."
              .formatted(since.get().toLocalDate(), until.get().toLocalDate()));
    }
    return new Filter(
        named(Facet.FAMILY),
        named(Facet.WOOD),
        marks(),
        since,
        until,
        named(Facet.RIG),
        named(Facet.BOARD),
        named(Facet.FINISH),
        named(Facet.PERSON),
        named(Facet.JOB));
  }

  private int fromTheStart() {
    asked.clear();
    since = Optional.empty();
    until = Optional.empty();
    return 0;
  }

  /**
   * Takes in what starts at a word; gives how many words that was, 0 if the vocabulary has grown
   * and all may mean something else.
   */
  private int understood(List<String> lower, int at) {
    int several = term(at, 2);
    if (several > 0) {
      return several;
    }
    Optional<TimePhrase.Found> time = times.at(lower, at);
    if (time.isPresent()) {
      return narrow(time.get());
    }
    String word = lower.get(at);
    if (TimePhrase.needsTime(word)) {
      throw Refusal.usage(
          "After \"%s\" must come a time such as 2026-03-01, march or last week, not \"%s\"."
              .formatted(word, at + 1 < words.size() ? words.get(at + 1) : ""));
    }
    if (isTheBurningOfPatches(lower, at)) {
      return 1;
    }
    if (term(at, 1) > 0) {
      return 1;
    }
    if (word.equals("or") && isMark(at - 1) && isMark(at + 1)) {
      throw Refusal.usage(
          "A patch must have all marks that you ask for, so \"%s or %s\" cannot be asked; ask for one, then for the other."
              .formatted(words.get(at - 1), words.get(at + 1)));
    }
    if (CONNECTING.contains(word)) {
      return 1;
    }
    if (vocabulary.meetPeople()) {
      return 0; // May may be somebody
    }
    time = times.bareAt(lower, at);
    if (time.isPresent()) {
      return narrow(time.get());
    }
    TimePhrase.requireOneReading(word);
    throw unknown(word, words.get(at));
  }

  /**
   * True for "burned" in "patches burned on oak", "burned by Ada" and "burned last month", which
   * every patch was; elsewhere it is char.
   */
  private boolean isTheBurningOfPatches(List<String> lower, int at) {
    if (!lower.get(at).equals("burned")) {
      return false;
    }
    boolean patches = at > 0 && TRIALS.contains(lower.get(at - 1));
    if (patches || at + 1 == lower.size()) {
      return patches;
    }
    String next = lower.get(at + 1);
    return next.equals("by") || TimePhrase.needsTime(next) || times.at(lower, at + 1).isPresent();
  }

  private boolean isMark(int at) {
    return at >= 0
        && at < words.size()
        && vocabulary.term(words.get(at)).filter(t -> t.facet() == Facet.MARK).isPresent();
  }

  /** The longest term of at least so many words, taken in; gives its length, 0 if there is none. */
  private int term(int at, int least) {
    for (int length = Math.min(vocabulary.longest(), words.size() - at);
        length >= least;
        length--) {
      Optional<Term> term = vocabulary.term(String.join(" ", words.subList(at, at + length)));
      if (term.isPresent()) {
        asked
            .computeIfAbsent(term.get().facet(), f -> new LinkedHashSet<>())
            .addAll(term.get().values());
        return length;
      }
    }
    return 0;
  }

  /** Two periods leave their overlap. */
  private int narrow(TimePhrase.Found time) {
    since = time.since().filter(t -> since.isEmpty() || t.isAfter(since.get())).or(() -> since);
    until = time.until().filter(t -> until.isEmpty() || t.isBefore(until.get())).or(() -> until);
    return time.length();
  }

  private Set<String> named(Facet facet) {
    return asked.getOrDefault(facet, Set.of());
  }

  private Set<Mark> marks() {
    Set<String> named = named(Facet.MARK);
    if (named.isEmpty()) {
      return Set.of();
    }
    EnumSet<Mark> marks = EnumSet.noneOf(Mark.class);
    for (Mark mark : Mark.values()) {
      if (named.contains(mark.word())) {
        marks.add(mark);
      }
    }
    try {
      return new Outcome(marks).marks();
    } catch (Refusal e) {
      throw e.reworded("No patch can match: " + e.getMessage());
    }
  }

  private Refusal unknown(String word, String typed) {
    if (DENYING.contains(word)) {
      return Refusal.usage(
          "A question must ask for marks that were seen, not for missing ones (\"%s\"); ask for clean, tint, char or residue."
              .formatted(typed));
    }
    Optional<String> code = vocabulary.patchCode(typed);
    if (code.isPresent()) {
      return Refusal.usage(
          "A question is about many patches, and \"%s\" is a single one; show patch %s instead."
              .formatted(typed, code.get()));
    }
    Set<String> known = new TreeSet<>(vocabulary.words());
    List<String> near = Nearest.to(word, known);
    return Refusal.usage(
        near.isEmpty()
            ? "I do not know \"%s\"; ask with families, woods, outcomes, names in this log, or a time such as last month."
                .formatted(typed)
            : "I do not know \"%s\"; nearest words in this log: %s."
                .formatted(typed, String.join(", ", near)));
  }
}
