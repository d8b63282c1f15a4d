package charline.ask;

import charline.ask.Piece.Denial;
import charline.ask.Piece.Fact;
import charline.log.search.Amount;
import charline.log.search.Condition.Measured;
import charline.log.search.NumberRange;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads "where we measured the depth" and "moisture was not noted": that there is a number. */
final class RecordedWords {
  /** Amounts that a patch need not have. */
  private static final Set<Amount> OPTIONAL =
      EnumSet.of(
          Amount.DEPTH,
          Amount.MOISTURE,
          Amount.THICKNESS,
          Amount.REST,
          Amount.STAND_OFF,
          Amount.DEFOCUS,
          Amount.TEMPERATURE,
          Amount.LINES,
          Amount.PATCH_AREA);

  private static final Set<String> RECORDING =
      Set.of(
          "measure",
          "measured",
          "measuring",
          "record",
          "recorded",
          "note",
          "noted",
          "log",
          "logged",
          "know");

  private static final Set<String> RECORDED =
      Set.of("measured", "recorded", "noted", "logged", "known", "taken", "given");

  private static final Set<String> ARTICLES = Set.of("the", "a", "an", "any", "its", "their");
  private static final Set<String> HELPING =
      Set.of("is", "are", "was", "were", "has", "have", "had", "been", "got");

  private RecordedWords() {}

  /** Takes a phrase in; gives how many words it was, 0 where there is none. */
  static int read(QuestionReader reader, int at) {
    return RECORDING.contains(reader.word(at)) ? after(reader, at) : before(reader, at);
  }

  /** "Measured the depth". */
  private static int after(QuestionReader reader, int at) {
    int next = at + 1;
    while (ARTICLES.contains(reader.word(next))) {
      next++;
    }
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(next);
    if (field.isEmpty() || numberFrom(reader, next + field.get().getKey())) {
      return 0;
    }
    return taken(reader, field.get().getValue(), false, next + field.get().getKey() - at);
  }

  /** "Depth was measured", "depth not noted". */
  private static int before(QuestionReader reader, int at) {
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(at);
    if (field.isEmpty()) {
      return 0;
    }
    int next = at + field.get().getKey();
    boolean denied = false;
    while (HELPING.contains(reader.word(next))
        || Set.of("not", "never").contains(reader.word(next))) {
      denied |= !HELPING.contains(reader.word(next));
      next++;
    }
    if (!RECORDED.contains(reader.word(next)) || numberFrom(reader, next + 1)) {
      return 0;
    }
    return taken(reader, field.get().getValue(), denied, next + 1 - at);
  }

  private static boolean numberFrom(QuestionReader reader, int at) {
    return reader.isNumber(at) || reader.isNumber(at + 1) && !reader.word(at).equals("and");
  }

  private static int taken(QuestionReader reader, Amount amount, boolean denied, int length) {
    if (!OPTIONAL.contains(amount)) {
      return 0;
    }
    if (denied) {
      reader.add(Denial.NOT);
    }
    reader.add(new Fact(new Measured(amount, NumberRange.ANY), amount, false));
    return length;
  }
}
