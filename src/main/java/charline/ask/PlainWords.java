package charline.ask;

import charline.ask.Piece.Denial;
import charline.ask.Piece.Effort;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Joint;
import charline.ask.Piece.Passes;
import charline.ask.Question.Purpose;
import charline.ask.time.Counting;
import charline.log.search.Amount;
import charline.log.search.Condition.Measured;
import charline.log.search.NumberRange;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;

/** Reads words that mean something in every log. */
final class PlainWords {
  /** Given for a sense that belongs elsewhere. */
  static final int OTHER = -1;

  private static final int SEVERAL = 5;

  private static final Set<String> VAGUE =
      Set.of("low", "high", "little", "small", "big", "large", "strong", "weak", "slow", "fast");

  private static final Set<String> DEGREES =
      Set.of(
          "hot", "cold", "fast", "slow", "deep", "high", "low", "hard", "strong", "long", "thick",
          "far", "big", "well", "good", "bad", "much", "clean", "wet", "close");

  private final QuestionReader reader;
  private final Superlatives superlatives;
  private final OutcomeWords outcomes;
  private final PeopleWords people;
  private final StackWords stacks;
  private final NoteWords notes;
  private final WoodWords woods;
  private final DenialWords denials;
  private final ExclusionWords exclusions;

  PlainWords(QuestionReader reader) {
    this.reader = reader;
    superlatives = new Superlatives(reader);
    outcomes = new OutcomeWords(reader);
    people = new PeopleWords(reader);
    stacks = new StackWords(reader);
    notes = new NoteWords(reader);
    woods = new WoodWords(reader);
    denials = new DenialWords(reader);
    exclusions = new ExclusionWords(reader);
  }

  /** Words of the longest phrase with a meaning from a word on. */
  int lengthOfPhrase(int at) {
    for (int length = Math.min(Sense.longest(), reader.size() - at); length > 0; length--) {
      if (Sense.of(reader.phrase(at, length)).isPresent()) {
        return length;
      }
    }
    return 0;
  }

  /** Takes a phrase in; gives how many words it was, 0 where it means nothing here. */
  int read(int at) {
    int alone = outcomes.alone(at);
    if (alone > 0) {
      return alone;
    }
    if (reader.word(at - 1).equals("how") && DEGREES.contains(reader.word(at))) {
      return 1; // "how hot can I go" asks to see doses
    }
    int excluding = exclusions.read(at);
    if (excluding > 0) {
      return excluding;
    }
    int recorded = RecordedWords.read(reader, at);
    if (recorded > 0) {
      return recorded;
    }
    int person = people.pronoun(at);
    if (person > 0) {
      return person;
    }
    if (VAGUE.contains(reader.word(at))
        && reader.fieldAt(at + 1).isPresent()
        && reader.isNumber(at + 1)) {
      return 1; // "a low power under 30 %"
    }
    for (int length = Math.min(Sense.longest(), reader.size() - at); length > 0; length--) {
      Optional<Sense> sense = Sense.of(reader.phrase(at, length));
      if (sense.isPresent()) {
        int taken = take(sense.get(), at, length);
        if (taken > 0) {
          return taken;
        }
      }
    }
    return outcomes.mark(at);
  }

  private int take(Sense sense, int at, int length) {
    switch (sense) {
      case AND -> reader.add(Joint.AND);
      case OR -> reader.add(Joint.OR);
      case NOT -> {
        return denials.read(at, length);
      }
      case NEVER -> reader.add(Denial.NEVER);
      case EVER -> {
        return outcomes.ever(at, length);
      }
      case EXCEPT -> reader.add(Denial.EXCEPT);
      case BUT -> reader.add(exclusions.leavesOut(at) ? Denial.EXCEPT : Joint.AND);
      case MINE -> reader.names().addAsker(people.judgingFollows(at), reader.word(at));
      case BY -> {
        return people.by(at, length);
      }
      case JUDGED -> {
        return people.judged(at, length);
      }
      default -> {
        return further(sense, at, length);
      }
    }
    return length;
  }

  /** What is left to the classes that each read one kind of words. */
  private int further(Sense sense, int at, int length) {
    List<Function<Sense, Integer>> kinds =
        List.of(
            s -> outcomes.read(s, at, length),
            s -> stacks.read(s, at, length),
            s -> notes.read(s, at, length),
            s -> woods.read(s, at, length));
    for (Function<Sense, Integer> kind : kinds) {
      int taken = kind.apply(sense);
      if (taken != OTHER) {
        return taken;
      }
    }
    return amount(sense, at, length);
  }

  // numbers and order

  private int amount(Sense sense, int at, int length) {
    switch (sense) {
      case BY_HAND -> known(Amount.HAND);
      case SCANNED -> known(Amount.SCAN);
      case TIMED -> known(Amount.SECONDS);
      case MEASURED_DEPTH -> {
        if (reader.isNumber(at + length - 1) || reader.isNumber(at + length - 2)) {
          return 0;
        }
        known(Amount.DEPTH);
      }
      case ONE_PASS -> {
        reader.remark("\"%s\" is read as after 1 pass.".formatted(reader.phrase(at, length)));
        reader.add(new Passes(NumberRange.exactly(1), false));
      }
      case TWICE -> {
        reader.remark("\"twice\" is read as after 2 passes.");
        reader.add(new Passes(NumberRange.exactly(2), false));
      }
      case TOOK -> reader.add(Effort.TOOK);
      case HALF_POWER -> power(50);
      case FULL_POWER -> power(100);
      case COUNT -> {
        return count(at, length);
      }
      case BEST -> {
        reader.wish().purpose = Purpose.BEST;
      }
      case ENDING_OFF -> {
        return outcomes.off(at);
      }
      case BARE -> {
        return 0;
      }
      default -> {
        return superlatives.read(sense, at, length);
      }
    }
    return length;
  }

  private void known(Amount amount) {
    reader.add(new Fact(new Measured(amount, NumberRange.ANY), amount, false));
  }

  private void power(double percent) {
    reader.add(
        new Fact(
            new Measured(Amount.POWER_PCT, NumberRange.exactly(percent)), Amount.POWER_PCT, true));
  }

  /** "How many passes" asks for passes, not for the number of patches. */
  private int count(int at, int length) {
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(at + length);
    if (field.isEmpty()) {
      reader.wish().purpose = Purpose.COUNT;
    }
    return length;
  }

  /** Several where the head word is in the plural, else one. */
  static int usually(String word) {
    return Filler.isSeveral(word) ? SEVERAL : 1;
  }

  static OptionalInt counted(String word) {
    return word.matches("0+") ? OptionalInt.empty() : Counting.of(word);
  }
}
