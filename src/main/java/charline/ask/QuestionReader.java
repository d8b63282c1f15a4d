package charline.ask;

import charline.ask.Piece.Coating;
import charline.ask.Piece.Denial;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Joint;
import charline.ask.Piece.Lie;
import charline.ask.Piece.Passes;
import charline.ask.Question.Purpose;
import charline.ask.time.TimePhrase;
import charline.log.search.Amount;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Has;
import charline.log.search.Condition.Judged;
import charline.log.search.Condition.Measured;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Noted;
import charline.log.search.Feature;
import charline.log.search.Term;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import charline.trial.Mark;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Reads a question from left to right. At each word the longest reading counts: names of the log,
 * then numbers, times and plain words.
 */
final class QuestionReader {
  private static final String TIME = "time";

  private final List<Word> words;
  private final List<String> lower;
  private final Vocabulary vocabulary;
  private final Names names;
  private final TimePhrase times;
  private final NumberPhrase numbers;
  private final PlainWords plain;
  private final VagueWords vague;
  private final UnknownWord unknown;
  private final List<Piece> pieces = new ArrayList<>();
  private final List<String> remarks = new ArrayList<>();
  private final Wish wish = new Wish();

  QuestionReader(List<Word> words, Vocabulary vocabulary, Optional<String> asker, Clock clock) {
    this.words = words;
    this.vocabulary = vocabulary;
    names = new Names(this, vocabulary, asker);
    lower = words.stream().map(w -> w.quoted() ? "" : w.lower()).toList();
    times = new TimePhrase(clock);
    numbers = new NumberPhrase(words);
    plain = new PlainWords(this);
    vague = new VagueWords(this);
    unknown = new UnknownWord(vocabulary);
  }

  Question read() {
    vague.refuseSpread();
    int at = 0;
    while (at < words.size()) {
      if (words.get(at).comma()) {
        add(Joint.COMMA);
      }
      at += understood(at);
    }
    Superlatives.requireOneList(this);
    requireDenied("Nothing follows that could be left out");
    Condition condition = Clauses.joined(pieces);
    Clauses.requirePossible(condition);
    if (wish.purpose == Purpose.BEST
        && condition.leaves().noneMatch(Condition.Seen.class::isInstance)) {
      condition = condition.and(Condition.Seen.last(Condition.Marks.of(Mark.CLEAN)));
      remarks.add("The best are looked for among patches that came out clean.");
    }
    return new Question(condition, wish.ranking(), wish.purpose, remarks);
  }

  /** The first name or time among these words that another text has not. */
  Optional<String> namedBeside(String other) {
    String there = other.toLowerCase(Locale.ROOT);
    for (int at = 0; at < words.size(); at++) {
      int name = names.name(at, 1);
      int time = times.at(lower, at).map(TimePhrase.Found::length).orElse(0);
      int length = Math.max(name, time);
      if (length > 0 && !there.contains(phrase(at, length))) {
        return Optional.of(phrase(at, length));
      }
    }
    return Optional.empty();
  }

  /**
   * Refuses a not or except that would deny what comes further on, or nothing.
   *
   * @param otherwise what is the trouble then, as the beginning of a sentence
   */
  void requireDenied(String otherwise) {
    int last = pieces.size() - 1;
    while (last >= 0 && pieces.get(last) instanceof Joint) {
      last--;
    }
    if (last >= 0 && pieces.get(last) instanceof Denial) {
      throw Refusal.usage(otherwise + "; name what is to be left out, such as \"except oak\".");
    }
  }

  Wish wish() {
    return wish;
  }

  void add(Piece piece) {
    pieces.add(piece);
  }

  /** "Char free" denies what was just said; false where nothing was that can be so. */
  boolean denyLast() {
    int last = pieces.size() - 1;
    boolean can =
        last >= 0
            && (pieces.get(last) instanceof Piece.Sight
                || pieces.get(last) instanceof Fact fact && fact.group() instanceof Feature);
    if (can) {
      pieces.add(last, Denial.NOT);
    }
    return can;
  }

  /** What names mean. */
  Names names() {
    return names;
  }

  void remark(String sentence) {
    if (!remarks.contains(sentence)) {
      remarks.add(sentence);
    }
  }

  Vocabulary vocabulary() {
    return vocabulary;
  }

  List<Piece> pieces() {
    return Collections.unmodifiableList(pieces);
  }

  int size() {
    return words.size();
  }

  /** A word in small letters, blank past the ends and for a text in quotes. */
  String word(int at) {
    return at >= 0 && at < lower.size() ? lower.get(at) : "";
  }

  Word whole(int at) {
    return words.get(at);
  }

  String phrase(int at, int length) {
    return AmountWords.phrase(words, at, length);
  }

  /** Takes in what starts at a word; gives how many words that was. */
  private int understood(int at) {
    if (words.get(at).quoted()) {
      return quoted(at);
    }
    if (word(at).equals("/")) {
      slash(at);
      return 1;
    }
    vague.refuse(at);
    int name = names.name(at, 2);
    int sense = plain.lengthOfPhrase(at);
    if (name > 1 && name >= sense) {
      return names.accepted(at, name);
    }
    Optional<NumberPhrase.Found> number = numbers.at(at);
    if (number.isPresent() && !vocabulary.term(phrase(at, number.get().length())).isPresent()) {
      return number(number.get());
    }
    Optional<TimePhrase.Found> time = times.at(lower, at);
    if (time.isPresent()) {
      return time(at, time.get());
    }
    if (Set.of("until", "till", "before").contains(word(at))
        && OutcomeWords.isOutcome(word(OutcomeWords.from(this, at + 1)))) {
      return 1; // "until it is clean"
    }
    if (TimePhrase.needsTime(word(at))) {
      throw Refusal.usage(
          "After \"%s\" must come a time such as 2026-03-01, march or last week, not \"%s\"."
              .formatted(word(at), at + 1 < words.size() ? words.get(at + 1).typed() : ""));
    }
    int both = names.both(at);
    if (both > 0) {
      return both;
    }
    int spoken = plain.read(at);
    if (spoken > 0) {
      return spoken;
    }
    if (names.name(at, 1) > 0) {
      return names.accepted(at, 1);
    }
    int derived = names.derived(at);
    if (derived > 0) {
      return derived;
    }
    int part = names.partOfName(at, Filler.is(word(at)) && !Filler.isUnlessNamed(word(at)) ? 2 : 1);
    if (part > 0) {
      return part;
    }
    if (Set.of("on", "over", "under").contains(word(at - 1)) && unknown.isSlip(word(at))) {
      throw unknown.refusal(words.get(at)); // "char on ask" hardly asks
    }
    if (Filler.is(word(at)) || Filler.isUnlessNamed(word(at)) || Filler.isAdverb(word(at))) {
      return 1;
    }
    int person = names.person(at, Attribute.PERSON);
    if (person > 0) {
      return person;
    }
    return rest(at);
  }

  /** Bare months, words of conditions and notes; all else is refused. */
  private int rest(int at) {
    OptionalInt count = PlainWords.counted(word(at));
    if (count.isPresent() && at + 1 < words.size() && Superlatives.countFollows(this, at)) {
      wish.count = count;
      return 1;
    }
    Optional<TimePhrase.Found> time = times.bareAt(lower, at);
    if (time.isPresent()) {
      return time(at, time.get());
    }
    TimePhrase.requireOneReading(word(at));
    Optional<String> code = vocabulary.patchCode(words.get(at).typed());
    if (code.isPresent() && !word(at).matches("\\d+")) {
      throw Refusal.usage(
          "A question is about many patches, and \"%s\" is a single one; show patch %s instead."
              .formatted(words.get(at).typed(), code.get()));
    }
    if (word(at).length() >= 4) {
      Optional<Term> figure = vocabulary.ownFigure(word(at));
      if (figure.isPresent()) {
        add(names.fact(figure.get(), word(at)));
        return 1;
      }
      Optional<Term> condition = vocabulary.conditions(word(at));
      if (condition.isPresent()) {
        add(names.fact(condition.get(), word(at)));
        return 1;
      }
      if (vocabulary.inNotes(word(at))) {
        add(new Fact(new Noted(word(at)), "note", false));
        return 1;
      }
    }
    throw unknown.refusal(words.get(at));
  }

  /** "Latex/primer" is a stack, "latex/pine" no more than both. */
  private void slash(int at) {
    boolean coats =
        !pieces.isEmpty()
            && pieces.get(pieces.size() - 1) instanceof Coating
            && names.isOf(Attribute.FAMILY, at + 1);
    if (coats) {
      remark("A stroke between coatings is read as the first over the second.");
      add(Lie.OVER);
    }
  }

  private int quoted(int at) {
    String text = words.get(at).typed();
    Optional<Term> term = vocabulary.term(text);
    add(term.isPresent() ? names.fact(term.get(), text) : new Fact(new Noted(text), "note", false));
    return 1;
  }

  // numbers and times

  private int number(NumberPhrase.Found found) {
    if (found.about()) {
      remark(
          "About so much is read as 10 %% more or less: %s %s."
              .formatted(found.amount().words(), found.range().words(found.amount().unit())));
    }
    if (found.amount() == Amount.PASSES) {
      add(new Passes(found.range(), false));
    } else {
      add(
          new Fact(
              new Measured(found.amount(), found.range()),
              found.amount(),
              found.range().low() == found.range().high()));
    }
    return found.length();
  }

  private int time(int at, TimePhrase.Found found) {
    boolean judged = at > 0 && Sense.JUDGED.has(word(at - 1)) && !word(at - 1).equals("reading");
    add(
        judged
            ? new Fact(new Judged(found.since(), found.until()), "judged", false)
            : new Fact(new Burned(found.since(), found.until()), TIME, false));
    return found.length();
  }

  void addFeature(Feature feature, boolean there) {
    if (!there) {
      add(Denial.NOT);
    }
    add(new Fact(new Has(feature), feature, false));
  }

  void addPlain(Attribute attribute, String value) {
    add(names.fact(new Term(attribute, Set.of(value)), value));
  }

  void addWoods(Set<String> woods, String said) {
    add(new Fact(new Named(Attribute.WOOD, woods, said), Attribute.WOOD, true));
  }

  /** Whether words that name coats or woods come at once, articles left out. */
  boolean coatFollows(int at) {
    int next = at;
    while (Set.of("a", "an", "the", "some", "any", "old", "its", "this", "that", "another")
        .contains(word(next))) {
      next++;
    }
    return names.isOf(Attribute.FAMILY, next);
  }

  /** Whether a time starts at a word. */
  boolean timeAt(int at) {
    return at < words.size()
        && (times.at(lower, at).isPresent() || times.bareAt(lower, at).isPresent());
  }

  /** Whether a word begins a name or a phrase that is known. */
  boolean isPhrase(int at) {
    return plain.lengthOfPhrase(at) > 0 || names.name(at, 1) > 0 || isNumber(at);
  }

  /** Whether a number starts at a word. */
  boolean isNumber(int at) {
    return at < words.size() && numbers.at(at).isPresent();
  }

  /** What amount is named at a word. */
  Optional<Map.Entry<Integer, Amount>> fieldAt(int at) {
    return AmountWords.field(words, at);
  }
}
