package charline.ask;

import charline.ask.Piece.Denial;
import charline.ask.Piece.Lie;
import charline.refusal.Refusal;
import java.util.Set;

/** Reads not, no, without, and what they do not deny. */
final class DenialWords {
  private static final Set<String> THINKING =
      Set.of(
          "know",
          "remember",
          "recall",
          "sure",
          "certain",
          "understand",
          "forget",
          "mind",
          "matter",
          "care",
          "only",
          "just",
          "clear about");

  private final QuestionReader reader;

  DenialWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** "No residue", "char free", "not that I know". */
  int read(int at, int length) {
    boolean last =
        at + length == reader.size()
            || reader.whole(at + length).comma()
            || Set.of("and", "or", "but").contains(reader.word(at + length));
    if (reader.word(at).equals("no") && last && reader.denyLast()) {
      return length; // "wetted: no"
    }
    boolean rhetorical =
        Set.of(
                    "did", "do", "does", "have", "has", "had", "is", "are", "was", "were", "can",
                    "could")
                .contains(reader.word(at - 1))
            && Set.of("we", "i", "you", "they", "he", "she", "there", "it", "anyone", "anybody")
                .contains(reader.word(at + 1));
    int mind = at + length;
    while (Set.of("really", "quite", "yet", "so", "be", "too").contains(reader.word(mind))) {
      mind++;
    }
    boolean thinking = THINKING.contains(reader.word(mind));
    boolean whether =
        reader.word(at - 1).equals("or")
            && reader.word(at).equals("not")
            && !OutcomeWords.isOutcome(reader.word(at + 1));
    if (rhetorical || thinking || whether) {
      return length; // "didn't we try oak" asks for oak
    }
    requireDeniable(at, length);
    reader.add(Denial.NOT);
    if (!Set.of("not", "non", "neither").contains(reader.word(at))
        && reader.coatFollows(at + length)) {
      reader.add(Lie.WITH); // "no primer" is about any coat, "not latex" about the finish
    }
    return length;
  }

  /** What is denied must be known: "without luck on pine" must not deny the pine. */
  private void requireDeniable(int at, int length) {
    int next = at + length;
    while (Set.of("a", "an", "the", "any", "much", "more", "yet", "ever", "even")
        .contains(reader.word(next))) {
      next++;
    }
    String what = reader.word(next);
    if (Set.of("tried", "tested", "try", "test").contains(what)) {
      throw Refusal.usage(
          "The log knows what was burned, not what was not %s; ask for what was.".formatted(what));
    }
    if (Filler.isThing(what) && reader.fieldAt(next).isEmpty() && !reader.isPhrase(next)) {
      throw Refusal.usage(
          "I do not know what \"%s %s\" says of a patch; deny an outcome, a coating, a wood or a name."
              .formatted(reader.whole(at).typed(), reader.whole(next).typed()));
    }
  }
}
