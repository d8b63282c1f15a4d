package charline.ask;

import charline.ask.Piece.Coating;
import charline.ask.Piece.Fact;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Named;
import charline.log.search.Term;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads names: families, woods, rigs, boards, finishes, jobs and people, whole or in part. */
final class Names {
  private record NamedAt(int length, Term term) {}

  private static final int LONGEST_PART_OF_A_NAME = 4;

  private final QuestionReader reader;
  private final Vocabulary vocabulary;
  private final Optional<String> asker;

  Names(QuestionReader reader, Vocabulary vocabulary, Optional<String> asker) {
    this.reader = reader;
    this.vocabulary = vocabulary;
    this.asker = asker;
  }

  /** "Both Runa and Mats": each of them burned or judged. */
  int both(int at) {
    if (!reader.word(at).equals("both")
        || !reader.word(at + 2).equals("and")
        || !isPerson(at + 1)
        || !isPerson(at + 3)) {
      return 0;
    }
    Condition one =
        new Named(
            Attribute.PERSON,
            vocabulary.person(reader.word(at + 1)).orElseThrow().values(),
            reader.whole(at + 1).typed());
    Condition other =
        new Named(
            Attribute.PERSON,
            vocabulary.person(reader.word(at + 3)).orElseThrow().values(),
            reader.whole(at + 3).typed());
    reader.add(new Fact(Condition.all(List.of(one, other)), "both", false));
    return 4;
  }

  private Optional<NamedAt> termAt(int at, int least) {
    for (int length = Math.min(vocabulary.longest(), reader.size() - at);
        length >= least;
        length--) {
      String phrase = reader.phrase(at, length);
      Optional<Term> term =
          phrase.isEmpty() || phrase.endsWith("/") ? Optional.empty() : vocabulary.term(phrase);
      if (term.isPresent()) {
        return Optional.of(new NamedAt(length, term.get()));
      }
    }
    return Optional.empty();
  }

  int name(int at, int least) {
    return termAt(at, least).map(NamedAt::length).orElse(0);
  }

  int accepted(int at, int least) {
    NamedAt named = termAt(at, least).orElseThrow();
    reader.add(fact(named.term(), reader.phrase(at, named.length())));
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
  int derived(int at) {
    String word = reader.word(at);
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
        reader.add(fact(term.get(), stem));
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
  int partOfName(int at, int least) {
    for (int length = Math.min(LONGEST_PART_OF_A_NAME, reader.size() - at);
        length >= least;
        length--) {
      String phrase = reader.phrase(at, length);
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
        reader.add(new Fact(Condition.either(any), group, true));
        return length;
      }
    }
    return 0;
  }

  /** A part of a name ends in a word of weight: "door" of "door rail", not "door on". */
  private boolean mayBePart(int at, int length) {
    return length == 1
        || !OutcomeWords.isOutcome(reader.word(at + length - 1))
            && !Set.of("on", "of", "in", "the", "with", "at", "and", "or", "for", "to", "by")
                .contains(reader.word(at + length - 1));
  }

  /** Somebody by name, from a word on. */
  int person(int at, Attribute attribute) {
    for (int length = Math.min(3, reader.size() - at); length > 0; length--) {
      String phrase = reader.phrase(at, length);
      if (phrase.isEmpty()) {
        continue;
      }
      Optional<Term> person = vocabulary.person(phrase);
      if (person.isPresent()) {
        Attribute doing = attribute == Attribute.PERSON ? doing(at + length) : attribute;
        reader.add(fact(new Term(doing, person.get().values()), phrase));
        return length;
      }
    }
    return 0;
  }

  /** "Mats burned" and "Runa judged": what the next word says that somebody did. */
  private Attribute doing(int at) {
    if ((reader.word(at).equals("and") || reader.word(at).equals("or")) && isPerson(at + 1)) {
      return doing(at + 2);
    }
    if (Set.of("has", "have", "had", "ever", "also", "already", "last", "just")
        .contains(reader.word(at))) {
      return doing(at + 1);
    }
    Optional<Sense> verb = Sense.of(reader.word(at));
    if (verb.filter(v -> v == Sense.JUDGED).isPresent()) {
      return Attribute.JUDGED_BY;
    }
    return verb.filter(v -> v == Sense.BURN).isPresent()
            || Set.of("did", "do", "fired", "fire", "made", "make", "shot", "lasered", "ran")
                .contains(reader.word(at))
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
    reader.add(fact(new Term(attribute, Set.of(me)), me));
  }

  /** Whether some words name a coating family or a wood. */
  boolean isOf(Attribute attribute, int at) {
    return termAt(at, 1).filter(t -> t.term().attribute() == attribute).isPresent();
  }

  /** Whether a word names somebody. */
  boolean isPerson(int at) {
    return at < reader.size()
        && !reader.word(at).isEmpty()
        && vocabulary.person(reader.word(at)).isPresent();
  }
}
