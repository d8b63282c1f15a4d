package charline.ask;

import charline.ask.Piece.Coating;
import charline.ask.Piece.Denial;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Joint;
import charline.ask.Piece.Lie;
import charline.ask.Piece.Passes;
import charline.ask.Question.Purpose;
import charline.ask.time.TimePhrase;
import charline.log.reference.Nearest;
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
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * Reads a question from left to right. At each word the longest reading counts: names of the log,
 * then numbers, times and plain words.
 */
final class QuestionReader {
  private static final int LONGEST_PART_OF_A_NAME = 4;
  private static final String TIME = "time";

  private final List<Word> words;
  private final List<String> lower;
  private final Vocabulary vocabulary;
  private final Optional<String> asker;
  private final TimePhrase times;
  private final NumberPhrase numbers;
  private final PlainWords plain;
  private final List<Piece> pieces = new ArrayList<>();
  private final List<String> remarks = new ArrayList<>();
  private final Wish wish = new Wish();

  QuestionReader(List<Word> words, Vocabulary vocabulary, Optional<String> asker, Clock clock) {
    this.words = words;
    this.vocabulary = vocabulary;
    this.asker = asker;
    lower = words.stream().map(w -> w.quoted() ? "" : w.lower()).toList();
    times = new TimePhrase(clock);
    numbers = new NumberPhrase(words);
    plain = new PlainWords(this);
  }

  Question read() {
    int at = 0;
    while (at < words.size()) {
      if (words.get(at).comma()) {
        add(Joint.COMMA);
      }
      at += understood(at);
    }
    Condition condition = Clauses.joined(pieces);
    Clauses.requirePossible(condition);
    if (wish.purpose == Purpose.BEST
        && condition.leaves().noneMatch(Condition.Seen.class::isInstance)) {
      condition = condition.and(Condition.Seen.last(Condition.Marks.of(Mark.CLEAN)));
      remarks.add("The best are looked for among patches that came out clean.");
    }
    return new Question(condition, wish.ranking(), wish.purpose, remarks);
  }

  /** What else than patches is wanted. */
  static final class Wish {
    Purpose purpose = Purpose.LIST;
    Optional<Ranking> ranking = Optional.empty();

    OptionalInt count = OptionalInt.empty();

    /** So many of something without an order are the newest. */
    Optional<Ranking> ranking() {
      return ranking.isEmpty() && count.isPresent()
          ? Optional.of(Ranking.byTime(true, count.getAsInt()))
          : ranking.map(r -> count.isPresent() ? r.limitedTo(count.getAsInt()) : r);
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
    return NumberPhrase.phrase(words, at, length);
  }

  /** Whether some words name a coating family or a wood. */
  boolean isOf(Attribute attribute, int at) {
    return termAt(at, 1).filter(t -> t.term().attribute() == attribute).isPresent();
  }

  /** Takes in what starts at a word; gives how many words that was. */
  private int understood(int at) {
    if (words.get(at).quoted()) {
      return quoted(at);
    }
    int name = name(at, 2);
    int sense = plain.lengthOfPhrase(at);
    if (name > 1 && name >= sense) {
      return accepted(at, name);
    }
    Optional<NumberPhrase.Found> number = numbers.at(at);
    if (number.isPresent() && !vocabulary.term(phrase(at, number.get().length())).isPresent()) {
      return number(number.get());
    }
    Optional<TimePhrase.Found> time = times.at(lower, at);
    if (time.isPresent()) {
      return time(at, time.get());
    }
    int outcome = at + 1;
    while (Set.of("it", "they", "is", "was", "all", "the", "they're").contains(word(outcome))) {
      outcome++;
    }
    if (TimePhrase.needsTime(word(at)) && PlainWords.isOutcome(word(outcome))) {
      return 1; // "until it is clean"
    }
    if (TimePhrase.needsTime(word(at))) {
      throw Refusal.usage(
          "After \"%s\" must come a time such as 2026-03-01, march or last week, not \"%s\"."
              .formatted(word(at), at + 1 < words.size() ? words.get(at + 1).typed() : ""));
    }
    int spoken = plain.read(at);
    if (spoken > 0) {
      return spoken;
    }
    if (name(at, 1) > 0) {
      return accepted(at, 1);
    }
    int derived = derived(at);
    if (derived > 0) {
      return derived;
    }
    int part = partOfName(at, Filler.is(word(at)) && !Filler.isUnlessNamed(word(at)) ? 2 : 1);
    if (part > 0) {
      return part;
    }
    if (Filler.is(word(at)) || Filler.isUnlessNamed(word(at)) || Filler.isAdverb(word(at))) {
      return 1;
    }
    int person = person(at, Attribute.PERSON);
    if (person > 0) {
      return person;
    }
    return rest(at);
  }

  /** Bare months, words of conditions and notes; all else is refused. */
  private int rest(int at) {
    OptionalInt count = PlainWords.counted(word(at));
    if (count.isPresent() && at + 1 < words.size() && countFollows(at)) {
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
        add(fact(figure.get(), word(at)));
        return 1;
      }
      Optional<Term> condition = vocabulary.conditions(word(at));
      if (condition.isPresent()) {
        add(fact(condition.get(), word(at)));
        return 1;
      }
      if (vocabulary.inNotes(word(at))) {
        add(new Fact(new Noted(word(at)), "note", false));
        return 1;
      }
    }
    throw unknown(at);
  }

  /** "3 fastest", "2 patches": a number that counts patches. */
  private boolean countFollows(int at) {
    String next = word(at + 1);
    Set<Sense> counting =
        EnumSet.of(
            Sense.LAST,
            Sense.FIRST,
            Sense.LOWEST,
            Sense.HIGHEST,
            Sense.FASTEST,
            Sense.SLOWEST,
            Sense.HOTTEST,
            Sense.COOLEST,
            Sense.DEEPEST,
            Sense.SHALLOWEST,
            Sense.BEST);
    return Filler.isPatches(next)
        || Sense.of(next).filter(counting::contains).isPresent()
        || Sense.of(phrase(at + 1, 2)).filter(counting::contains).isPresent();
  }

  private int quoted(int at) {
    String text = words.get(at).typed();
    Optional<Term> term = vocabulary.term(text);
    add(term.isPresent() ? fact(term.get(), text) : new Fact(new Noted(text), "note", false));
    return 1;
  }

  // names

  private record NamedAt(int length, Term term) {}

  private Optional<NamedAt> termAt(int at, int least) {
    for (int length = Math.min(vocabulary.longest(), words.size() - at);
        length >= least;
        length--) {
      String phrase = phrase(at, length);
      Optional<Term> term = phrase.isEmpty() ? Optional.empty() : vocabulary.term(phrase);
      if (term.isPresent()) {
        return Optional.of(new NamedAt(length, term.get()));
      }
    }
    return Optional.empty();
  }

  private int name(int at, int least) {
    return termAt(at, least).map(NamedAt::length).orElse(0);
  }

  private int accepted(int at, int least) {
    NamedAt named = termAt(at, least).orElseThrow();
    add(fact(named.term(), phrase(at, named.length())));
    return named.length();
  }

  Piece fact(Term term, String said) {
    Attribute attribute = term.attribute();
    if (attribute == Attribute.FAMILY) {
      return new Coating(term.values(), String.join(" or ", new TreeSet<>(term.values())));
    }
    String called =
        attribute == Attribute.WOOD && term.values().size() > 1
            ? said + " or one of its species"
            : String.join(" or ", new TreeSet<>(term.values()));
    return new Fact(new Named(attribute, term.values(), called), attribute, true);
  }

  /** Plurals and participles of families and woods: oaks, varnished, waxed. */
  private int derived(int at) {
    String word = word(at);
    for (String stem : stems(word)) {
      Optional<Term> term =
          vocabulary
              .term(stem)
              .filter(
                  t ->
                      t.attribute() == Attribute.FAMILY
                          || t.attribute() == Attribute.WOOD
                          || t.attribute() == Attribute.FIGURE);
      if (term.isPresent()) {
        add(fact(term.get(), stem));
        return 1;
      }
    }
    return 0;
  }

  private static List<String> stems(String word) {
    List<String> stems = new ArrayList<>();
    for (String ending : List.of("s", "es", "ed", "d", "ing")) {
      if (word.endsWith(ending) && word.length() > ending.length() + 2) {
        stems.add(word.substring(0, word.length() - ending.length()));
      }
    }
    if (word.endsWith("ies")) {
      stems.add(word.substring(0, word.length() - 3) + "y");
    }
    if (word.endsWith("ked") || word.endsWith("cked")) {
      stems.add(word.substring(0, word.length() - 3));
    }
    return stems;
  }

  /** Words that names of the log have in them. */
  private int partOfName(int at, int least) {
    for (int length = Math.min(LONGEST_PART_OF_A_NAME, words.size() - at);
        length >= least;
        length--) {
      String phrase = phrase(at, length);
      if (phrase.isEmpty() || length == 1 && phrase.length() < 2 || !mayBePart(at, length)) {
        continue;
      }
      List<Term> terms = vocabulary.partly(phrase);
      if (terms.isEmpty() && phrase.endsWith("s")) {
        terms = vocabulary.partly(phrase.substring(0, phrase.length() - 1));
      }
      if (!terms.isEmpty()) {
        List<Condition> any = new ArrayList<>();
        terms.forEach(
            t ->
                any.add(
                    new Named(
                        t.attribute(),
                        t.values(),
                        String.join(" or ", new TreeSet<>(t.values())))));
        Object group = terms.size() == 1 ? terms.get(0).attribute() : "names";
        add(new Fact(Condition.either(any), group, true));
        return length;
      }
    }
    return 0;
  }

  /** A part of a name ends in a word of weight: "door" of "door rail", not "door on". */
  private boolean mayBePart(int at, int length) {
    return length == 1
        || !PlainWords.isOutcome(word(at + length - 1))
            && !Set.of("on", "of", "in", "the", "with", "at", "and", "or", "for", "to", "by")
                .contains(word(at + length - 1));
  }

  /** Somebody by name, from a word on. */
  int person(int at, Attribute attribute) {
    for (int length = Math.min(3, words.size() - at); length > 0; length--) {
      String phrase = phrase(at, length);
      if (phrase.isEmpty()) {
        continue;
      }
      Optional<Term> person = vocabulary.person(phrase);
      if (person.isPresent()) {
        Attribute doing = attribute == Attribute.PERSON ? doing(at + length) : attribute;
        add(fact(new Term(doing, person.get().values()), phrase));
        return length;
      }
    }
    return 0;
  }

  /** "Mats burned" and "Runa judged": what the next word says that somebody did. */
  private Attribute doing(int at) {
    if ((word(at).equals("and") || word(at).equals("or")) && isPerson(at + 1)) {
      return doing(at + 2);
    }
    if (Set.of("has", "have", "had", "ever", "also", "already", "last", "just")
        .contains(word(at))) {
      return doing(at + 1);
    }
    Optional<Sense> verb = Sense.of(word(at));
    if (verb.filter(v -> v == Sense.JUDGED).isPresent()) {
      return Attribute.JUDGED_BY;
    }
    return verb.filter(v -> v == Sense.BURN).isPresent()
            || Set.of("did", "do", "fired", "fire", "made", "make", "shot", "lasered", "ran")
                .contains(word(at))
        ? Attribute.BURNED_BY
        : Attribute.PERSON;
  }

  /** The one who asks. */
  void addAsker(Attribute attribute, String typed) {
    String me =
        asker.orElseThrow(
            () ->
                Refusal.usage(
                    "I do not know who \"%s\" is; say the name, as \"by Ada\".".formatted(typed)));
    add(fact(new Term(attribute, Set.of(me)), me));
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
    add(fact(new Term(attribute, Set.of(value)), value));
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
    return isOf(Attribute.FAMILY, next);
  }

  /** Whether a time starts at a word. */
  boolean timeAt(int at) {
    return at < words.size()
        && (times.at(lower, at).isPresent() || times.bareAt(lower, at).isPresent());
  }

  /** Whether a word begins a name or a phrase that is known. */
  boolean isPhrase(int at) {
    return plain.lengthOfPhrase(at) > 0 || name(at, 1) > 0 || isNumber(at);
  }

  /** Whether a number starts at a word. */
  boolean isNumber(int at) {
    return at < words.size() && numbers.at(at).isPresent();
  }

  /** What amount is named at a word. */
  Optional<Map.Entry<Integer, Amount>> fieldAt(int at) {
    return NumberPhrase.field(words, at);
  }

  /** Whether a word names somebody. */
  boolean isPerson(int at) {
    return at < words.size() && !word(at).isEmpty() && vocabulary.person(word(at)).isPresent();
  }

  private Refusal unknown(int at) {
    String typed = words.get(at).typed();
    Optional<String> advice = vocabulary.advice(typed);
    if (advice.isPresent()) {
      return Refusal.usage(advice.get());
    }
    if (word(at).matches("[-+]?\\d.*")) {
      return Refusal.usage(
          "I do not know what \"%s\" is a number of; add a unit or a name, such as 50 %%, 30 mm/s, 5 J/cm2, 2 passes or spot 0.5 mm."
              .formatted(typed));
    }
    List<String> near = Nearest.to(word(at), vocabulary.words());
    if (!near.isEmpty()) {
      return Refusal.usage(
          "I do not know \"%s\"; nearest words in this log: %s."
              .formatted(typed, String.join(", ", near)));
    }
    near = Nearest.to(word(at), Sense.words());
    if (near.isEmpty()) {
      near = Nearest.to(word(at), vocabulary.people());
    }
    return Refusal.usage(
        near.isEmpty()
            ? "I do not know \"%s\"; ask with families, woods, outcomes, numbers with units, names in this log, or a time such as last month."
                .formatted(typed)
            : "I do not know \"%s\"; nearest words: %s.".formatted(typed, String.join(", ", near)));
  }

  /** Takes a lie of coats in, where it may be one. */
  void addLie(Lie lie) {
    add(lie);
  }
}
