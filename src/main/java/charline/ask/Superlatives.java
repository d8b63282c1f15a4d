package charline.ask;

import charline.log.search.Amount;
import charline.refusal.Refusal;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Reads "the lowest dose", "the last 5", "sorted by power" and the like. */
final class Superlatives {
  /** What a number before it counts. */
  private static final Set<Sense> COUNTED =
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

  private static final Set<String> LISTED =
      Set.of(
          "board", "rig", "wood", "finish", "coating", "coat", "family", "job", "person", "day",
          "week", "month", "outcome", "species");

  private final QuestionReader reader;

  Superlatives(QuestionReader reader) {
    this.reader = reader;
  }

  int read(Sense sense, int at, int length) {
    int before = reader.word(at - 1).equals("the") ? at - 2 : at - 1;
    boolean first = reader.wish().ranking.isEmpty();
    if (!first && reader.word(before).equals("to") && reader.wish().ranking.get().limit() == 0) {
      return length; // "from the hottest to the coolest"
    }
    int taken = ranking(sense, at, length);
    if (reader.wish().ranking.isPresent()) {
      reader.requireDenied("I cannot leave \"%s\" out".formatted(reader.phrase(at, length)));
    }
    if (first && reader.word(before).equals("from")) {
      reader.wish().ranking = reader.wish().ranking.map(r -> r.limitedTo(0));
    }
    return taken;
  }

  private int ranking(Sense sense, int at, int length) {
    return switch (sense) {
      case LAST -> byTime(true, at, length);
      case FIRST -> byTime(false, at, length);
      case LOWEST -> extreme(false, at, length);
      case HIGHEST -> extreme(true, at, length);
      case TOP_FEW -> top(at, length);
      case FASTEST -> ranked(Amount.SPEED, true, at, length);
      case SLOWEST -> ranked(Amount.SPEED, false, at, length);
      case HOTTEST -> ranked(Amount.DOSE, true, at, length);
      case COOLEST -> ranked(Amount.DOSE, false, at, length);
      case DEEPEST -> ranked(Amount.DEPTH, true, at, length);
      case SHALLOWEST -> ranked(Amount.DEPTH, false, at, length);
      case SORTED -> sorted(at, length);
      case NEWEST_FIRST -> order(Ranking.byTime(true, 0), length);
      case OLDEST_FIRST -> order(Ranking.byTime(false, 0), length);
      case DESCENDING -> direction(true, length);
      case ASCENDING -> direction(false, length);
      default -> 0;
    };
  }

  private int order(Ranking ranking, int length) {
    reader.wish().ranking = Optional.of(ranking);
    return length;
  }

  private int direction(boolean falling, int length) {
    reader.wish().ranking = reader.wish().ranking.map(r -> new Ranking(r.by(), falling, r.limit()));
    return length;
  }

  /** How many were named before or after a superlative: "3 fastest", "last five". */
  private OptionalInt number(int at, int length) {
    OptionalInt after = PlainWords.counted(reader.word(at + length));
    return after.isPresent() ? after : OptionalInt.empty();
  }

  private int limit(int at, int length) {
    OptionalInt after = number(at, length);
    if (after.isPresent()) {
      return after.getAsInt();
    }
    for (int i = at + length; i < Math.min(at + length + 4, reader.size()); i++) {
      if (Filler.isPatches(reader.word(i))) {
        return PlainWords.usually(reader.word(i));
      }
    }
    return 1;
  }

  private int byTime(boolean newest, int at, int length) {
    if (Set.of("pass", "passes").contains(reader.word(at + length))) {
      return length; // "the last pass" is what counts anyway
    }
    int limit = limit(at, length);
    reader.wish().ranking = Optional.of(Ranking.byTime(newest, limit));
    return length + (number(at, length).isPresent() ? 1 : 0);
  }

  /** "Lowest dose", "most passes"; the lowest of nothing is the lowest dose. */
  private int extreme(boolean highest, int at, int length) {
    int next = at + length;
    int counted = number(at, length).isPresent() ? 1 : 0;
    while (Set.of("possible", "working", "of", "the", "laser")
        .contains(reader.word(next + counted))) {
      next++;
    }
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(next + counted);
    if (field.isEmpty()) {
      if (reader.word(at).equals("most") || reader.word(at).equals("least")) {
        AmountWords.Comparative plain = AmountWords.PLAIN.get(reader.word(at + length));
        if (plain != null) { // "the most slow"
          return ranked(plain.amount(), plain.more() == highest, at, length + 1);
        }
        return Filler.isSeveral(reader.word(at + 1)) || reader.word(at + 1).equals("of")
            ? length
            : 0;
      }
      reader.remark(
          "%s of what was not said, so the dose counts.".formatted(highest ? "Highest" : "Lowest"));
      return ranked(Amount.DOSE, highest, at, length);
    }
    int limit = limit(at, length);
    reader.wish().ranking = Optional.of(Ranking.by(field.get().getValue(), highest, limit));
    return next + counted + field.get().getKey() - at;
  }

  private int ranked(Amount usual, boolean highest, int at, int length) {
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(at + length);
    if (field.isPresent() && usual == Amount.DOSE) { // "the strongest power"
      reader.wish().ranking =
          Optional.of(Ranking.by(field.get().getValue(), highest, limit(at, length)));
      return length + field.get().getKey();
    }
    int limit = limit(at, length);
    if (field.isPresent() && Set.of(Amount.HAND, Amount.SCAN).contains(field.get().getValue())) {
      // "the slowest hand speed"
      reader.wish().ranking = Optional.of(Ranking.by(field.get().getValue(), highest, limit));
      return length + field.get().getKey();
    }
    reader.wish().ranking = Optional.of(Ranking.by(usual, highest, limit));
    return length + (number(at, length).isPresent() ? 1 : 0);
  }

  /** "Top 3" of the newest, of the best, of the hottest. */
  private int top(int at, int length) {
    OptionalInt number = number(at, length);
    if (number.isEmpty()) {
      return 0;
    }
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(at + length + 1);
    if (field.isPresent()) {
      reader.wish().ranking =
          Optional.of(Ranking.by(field.get().getValue(), true, number.getAsInt()));
      return length + 1 + field.get().getKey();
    }
    reader.wish().ranking =
        Optional.of(
            reader.wish().ranking.orElse(Ranking.byTime(true, 0)).limitedTo(number.getAsInt()));
    return length + 1;
  }

  private int sorted(int at, int length) {
    int next = at + length;
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(next);
    if (field.isPresent()) {
      reader.wish().ranking = Optional.of(Ranking.by(field.get().getValue(), false, 0));
      return length + field.get().getKey();
    }
    if (Set.of("date", "time", "day", "age").contains(reader.word(next))) {
      reader.wish().ranking = Optional.of(Ranking.byTime(false, 0));
      return length + 1;
    }
    return 0;
  }

  /** "3 fastest", "2 patches": whether a number counts patches. */
  static boolean countFollows(QuestionReader reader, int at) {
    String next = reader.word(at + 1);
    return Filler.isPatches(next)
        || Sense.of(next).filter(COUNTED::contains).isPresent()
        || Sense.of(reader.phrase(at + 1, 2)).filter(COUNTED::contains).isPresent();
  }

  /** One list is given, not one for each board. */
  static void requireOneList(QuestionReader reader) {
    boolean limited = reader.wish().ranking().filter(r -> r.limit() > 0).isPresent();
    for (int i = 0; limited && i + 1 < reader.size(); i++) {
      if (Set.of("each", "every", "per").contains(reader.word(i))
          && LISTED.contains(reader.word(i + 1))) {
        throw Refusal.usage(
            "I cannot pick for \"%s %s\", only from all patches together; ask for one at a time."
                .formatted(reader.word(i), reader.word(i + 1)));
      }
    }
  }
}
