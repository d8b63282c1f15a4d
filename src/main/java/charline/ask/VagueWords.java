package charline.ask;

import charline.refusal.Refusal;
import java.util.List;
import java.util.Set;

/**
 * Refuses what says more or less than a patch was judged by, since to pass it over would answer
 * another question: hardly charred, charred before it cleared, within 5 % of 60 %.
 */
final class VagueWords {
  private static final Set<String> NEARLY =
      Set.of(
          "hardly",
          "barely",
          "scarcely",
          "almost",
          "nearly",
          "partly",
          "partially",
          "half",
          "mostly",
          "incompletely");

  private static final Set<String> ORDER = Set.of("before", "after", "once", "since");

  private static final String BOTH_ENDS =
      "Write both ends in place of \"%s\", such as 55 to 65 %%.";

  private static final Set<String> SPREAD = Set.of("give or take", "plus or minus", "plus minus");

  private final QuestionReader reader;

  VagueWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** Refuses "60 % give or take 5" anywhere, as its number was read with what comes before. */
  void refuseSpread() {
    for (int at = 0; at < reader.size(); at++) {
      for (String said : List.of(reader.phrase(at, 3), reader.phrase(at, 2))) {
        if (SPREAD.contains(said)) {
          throw Refusal.usage(BOTH_ENDS.formatted(said));
        }
      }
    }
  }

  /** Refuses what starts at a word if it is of these. */
  void refuse(int at) {
    String word = reader.word(at);
    int next = OutcomeWords.from(reader, at + 1);
    int outcome = OutcomeWords.length(reader, next);
    if (NEARLY.contains(word) && outcome > 0) {
      throw Refusal.usage(
          "A patch is clean or not and charred or not; \"%s\" is between, so leave it out or ask for a mark such as residue."
              .formatted(word));
    }
    if (ORDER.contains(word) && outcome > 0 && !countedBefore()) {
      throw Refusal.usage(
          "I cannot tell which came first, as after \"%s %s\"; ask with a number, such as charred after 2 passes."
              .formatted(word, reader.phrase(next, outcome)));
    }
    if (word.equals("within") && reader.isNumber(at + 1) && ofNumber(at)) {
      throw Refusal.usage(BOTH_ENDS.formatted("within"));
    }
  }

  /** "Needed three passes before it came clean". */
  private boolean countedBefore() {
    int last = reader.pieces().size() - 1;
    return last >= 0 && reader.pieces().get(last) instanceof Piece.Passes;
  }

  /** "Within 5 % of 60 %". */
  private boolean ofNumber(int at) {
    for (int i = at + 2; i <= at + 4; i++) {
      if (reader.word(i).equals("of") && reader.isNumber(i + 1)) {
        return true;
      }
    }
    return false;
  }
}
