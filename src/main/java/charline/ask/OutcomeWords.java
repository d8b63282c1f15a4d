package charline.ask;

import charline.ask.Piece.Denial;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Sight;
import charline.log.search.Attribute;
import charline.log.search.Condition.Marks;
import charline.trial.Mark;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** Reads what came of a patch: clean, burnt, it came off. */
final class OutcomeWords {
  private static final Set<String> HELPING =
      Set.of(
          "did",
          "does",
          "do",
          "not",
          "never",
          "to",
          "will",
          "would",
          "could",
          "can",
          "that",
          "which",
          "who",
          "it",
          "all",
          "fully",
          "completely",
          "always",
          "they",
          "must",
          "should",
          "this",
          "these",
          "really",
          "properly",
          "ever",
          "actually",
          "what");

  private static final Set<String> HELPING_FIRST =
      Set.of("did", "do", "does", "has", "have", "had", "is", "are", "was", "were", "can", "not");

  private static final Set<String> PEOPLE =
      Set.of(
          "i",
          "we",
          "you",
          "they",
          "he",
          "she",
          "who",
          "whoever",
          "someone",
          "somebody",
          "anyone",
          "anybody",
          "nobody",
          "everybody");

  private static final Set<String> BEFORE_IT =
      Set.of(
          "it", "they", "is", "are", "was", "were", "came", "come", "got", "all", "the", "they're",
          "been", "any", "some", "of", "had", "has");

  /** After these, "only" is about what they say. */
  private static final Set<String> ONLY_THEN =
      Set.of("after", "at", "with", "from", "above", "below", "over", "under", "in", "when", "if");

  private final QuestionReader reader;

  OutcomeWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** Takes a phrase in; gives how many words it was, or {@link PlainWords#OTHER}. */
  int read(Sense sense, int at, int length) {
    switch (sense) {
      case CLEAN -> {
        return clean(at, length);
      }
      case CLEARED, UNCLEARED -> {
        if (sense == Sense.UNCLEARED) {
          reader.add(Denial.NOT);
        }
        cleared();
      }
      case CLEAR -> {
        return clear(at);
      }
      case CHARRED -> reader.add(new Sight(Marks.of(Mark.CHAR)));
      case BURN -> {
        return burned(at);
      }
      case TINTED -> reader.add(new Sight(Marks.of(Mark.TINT)));
      case RESIDUE -> {
        reader.add(new Sight(Marks.of(Mark.RESIDUE)));
        boolean behind =
            reader.word(at + length - 1).equals("left")
                && Set.of("behind", "over").contains(reader.word(at + length));
        return behind ? length + 1 : length;
      }
      case FAILED -> {
        reader.remark("Failed is read as not clean.");
        reader.add(new Sight(Marks.NOT_CLEAN));
      }
      case SAFE -> {
        reader.remark("Safe is read as not charred, which is less than a window promises.");
        reader.add(new Sight(Marks.NOT_CHARRED));
      }
      default -> {
        return PlainWords.OTHER;
      }
    }
    return length;
  }

  private void cleared() {
    reader.remark(
        "Cleared is read as no residue and no tint left, whether the wood is charred or not.");
    reader.add(new Sight(Marks.CLEARED));
  }

  /** "We worked on oak" says nothing of how it came out, "it worked on oak" does. */
  private int clean(int at, int length) {
    String word = reader.word(at);
    boolean people = Set.of("i", "we", "you", "they", "he", "she").contains(reader.word(at - 1));
    if (word.startsWith("work") && people
        || word.equals("work")
            && !HELPING.contains(reader.word(at - 1))
            && !Filler.isSeveral(reader.word(at - 1))
            && !Set.of("is", "are").contains(reader.word(at - 1))) {
      return 0;
    }
    if (Set.of("well", "right", "fine", "good").contains(word)
        && reader.word(at + 1).equals("now")) {
      return 0;
    }
    if (!word.equals("clean")
        && !word.startsWith("clean")
        && !word.startsWith("work")
        && length == 1) {
      reader.remark("\"%s\" is read as clean.".formatted(reader.whole(at).typed()));
    }
    reader.add(new Sight(Marks.of(Mark.CLEAN)));
    return length;
  }

  /** An outcome where something clears, else the coat. */
  private int clear(int at) {
    boolean anotherCoat = false;
    for (int i = 0; i < reader.size(); i++) {
      anotherCoat |= i != at && reader.names().isOf(Attribute.FAMILY, i);
    }
    String before = reader.word(at - 1);
    boolean verb =
        HELPING.contains(before)
            || Filler.isPatches(before)
            || anotherCoat && !Set.of("over", "under", "on", "or", "and").contains(before)
            || reader.names().isOf(Attribute.FAMILY, at - 1)
            || Sense.of(before).filter(s -> s == Sense.NOT || s == Sense.NEVER).isPresent();
    if (Set.of("over", "under", "underneath").contains(reader.word(at + 1))) {
      verb = HELPING.contains(before) || reader.names().isOf(Attribute.FAMILY, at - 1);
    }
    for (int i = 0; i < at; i++) {
      verb |= Set.of("did", "does", "do", "didn't").contains(reader.word(i));
    }
    if (!verb) {
      reader.remark("\"clear\" is read as the clear coat; say cleared for the outcome.");
      return 0;
    }
    reader.remark("\"clear\" is read as the outcome; say clear coat for the coat.");
    cleared();
    return 1;
  }

  /**
   * Passes over "burned" in "patches burned on oak", "patches that were burned on the arris",
   * "burned by Ada" and "what did we burn", which every patch was; elsewhere it is char.
   */
  private int burned(int at) {
    boolean patches =
        at > 0
            && Filler.isPatches(reader.word(at - 1))
            && !Set.of("ones", "one").contains(reader.word(at - 1));
    boolean person =
        at > 0
            && (PEOPLE.contains(reader.word(at - 1))
                || reader.pieces().size() > 0
                    && reader.pieces().get(reader.pieces().size() - 1) instanceof Fact fact
                    && Set.of(Attribute.PERSON, Attribute.BURNED_BY).contains(fact.group()));
    String next = reader.word(at + 1);
    boolean itself =
        Set.of("what", "which", "that", "it", "wood", "result", "outcome", "nothing", "something")
            .contains(reader.word(at - 1));
    boolean how =
        reader.word(at).equals("burned")
            && !itself
            && (Set.of("by", "with", "using", "under", "at", "since", "from", "when", "where")
                    .contains(next)
                || reader.timeAt(at + 1));
    boolean made =
        Set.of("was", "were", "been").contains(reader.word(at - 1))
            && (Filler.isPatches(reader.word(at - 2))
                || Set.of("that", "which").contains(reader.word(at - 2))
                    && Filler.isPatches(reader.word(at - 3)))
            && Set.of("on", "in", "into").contains(next);
    if (patches && !itself || person || how || made) {
      return 1;
    }
    reader.add(new Sight(Marks.of(Mark.CHAR)));
    return 1;
  }

  /** "It came off", "did we get it off"; elsewhere it is plain speech. */
  int off(int at) {
    boolean asked = false;
    for (int i = 0; i < at; i++) {
      asked |=
          Set.of("did", "does", "do", "not", "never", "has", "manage").contains(reader.word(i));
    }
    for (int i = Math.max(0, at - 6); i < at; i++) {
      String verb = reader.word(i);
      if (Set.of("came", "comes", "got", "took", "fell").contains(verb)
          || asked && Set.of("come", "get", "take", "fall").contains(verb)) {
        cleared();
        return 1;
      }
    }
    return 0;
  }

  /** "Tint only": no other mark. */
  int alone(int at) {
    Optional<Mark> mark =
        Arrays.stream(Mark.values())
            .filter(m -> m != Mark.CLEAN)
            .filter(m -> m.word().equals(reader.word(at)) || m.others().contains(reader.word(at)))
            .findFirst();
    boolean after =
        Set.of("only", "alone").contains(reader.word(at + 1))
            && !ONLY_THEN.contains(reader.word(at + 2));
    boolean just =
        Set.of("only", "just").contains(reader.word(at - 1))
            && mark.filter(m -> m.word().equals(reader.word(at))).isPresent()
            && !reader.word(at - 2).equals("not")
            && !Filler.isPatches(reader.word(at + 1));
    boolean before =
        just
            || Sense.of(reader.phrase(at - 2, 2)).filter(s -> s == Sense.NOTHING_BUT).isPresent()
            || Sense.of(reader.phrase(at - 3, 3)).filter(s -> s == Sense.NOTHING_BUT).isPresent();
    if (mark.isEmpty() || !after && !before) {
      return 0;
    }
    EnumSet<Mark> others = EnumSet.complementOf(EnumSet.of(mark.get(), Mark.CLEAN));
    reader.add(new Sight(new Marks(Set.of(mark.get()), others)));
    return after ? 2 : 1;
  }

  /** Words for marks that the marks themselves know. */
  int mark(int at) {
    for (Mark mark : Mark.values()) {
      if (mark.word().equals(reader.word(at)) || mark.others().contains(reader.word(at))) {
        reader.add(new Sight(Marks.of(mark)));
        return 1;
      }
    }
    return 0;
  }

  /**
   * "Ever clean" is about any reading; "did it ever clear" asks how it ended, as other questions
   * do.
   */
  int ever(int at, int length) {
    boolean asked = false;
    for (int i = 0; i < at; i++) {
      asked |= HELPING_FIRST.contains(reader.word(i));
    }
    if (!asked && isOutcome(reader.word(at + length))) {
      reader.add(Piece.Once.EVER);
    }
    return length;
  }

  /** Where an outcome stands after "it is", "they came" and the like; the place itself if none. */
  static int from(QuestionReader reader, int at) {
    int next = at;
    while (BEFORE_IT.contains(reader.word(next)) && length(reader, next) == 0) {
      next++;
    }
    return next;
  }

  /** Words of the longest phrase at a place that means an outcome, 0 where none does. */
  static int length(QuestionReader reader, int at) {
    for (int length = Math.min(Sense.longest(), reader.size() - at); length > 0; length--) {
      if (isOutcome(reader.phrase(at, length))) {
        return length;
      }
    }
    return 0;
  }

  /** Whether a word means an outcome. */
  static boolean isOutcome(String word) {
    return Sense.of(word).filter(s -> s.ordinal() <= Sense.UNCLEARED.ordinal()).isPresent();
  }
}
