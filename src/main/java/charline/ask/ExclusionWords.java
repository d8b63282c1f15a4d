package charline.ask;

import charline.ask.Piece.Denial;
import charline.refusal.Refusal;
import java.util.Set;

/**
 * Reads what leaves something out without a "not": any board but sill end 1, other woods than pine,
 * power outside 40 to 60 %, failed to clear.
 */
final class ExclusionWords {
  private static final Set<String> EVERY =
      Set.of(
          "all",
          "any",
          "every",
          "each",
          "everything",
          "everyone",
          "everybody",
          "anything",
          "anyone",
          "anybody");

  private static final Set<String> NONE = Set.of("no", "none", "nobody", "nothing", "neither");
  private static final Set<String> OTHER = Set.of("other", "others", "else", "different");
  private static final Set<String> ARTICLES =
      Set.of("the", "those", "that", "these", "ones", "a", "an");
  private static final Set<String> RANGE = Set.of("range", "window", "span");
  private static final Set<String> FAILING =
      Set.of("fail", "fails", "failed", "failing", "unable", "refused", "refuses");

  /** How far a word of comparison lies before its than. */
  private static final int NEAR = 3;

  private final QuestionReader reader;

  ExclusionWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** Takes in a word that leaves out; gives how many words it was, 0 where it does not. */
  int read(int at) {
    return switch (reader.word(at)) {
      case "save" -> everyThingBefore(at) ? left(1) : 0;
      case "than" -> than(at);
      case "outside", "out" -> outside(at);
      default -> FAILING.contains(reader.word(at)) ? failing(at) : 0;
    };
  }

  private int left(int length) {
    reader.add(Denial.EXCEPT);
    return length;
  }

  /**
   * "All woods but pine" leaves pine out, "slow but clean" joins.
   *
   * @return whether it leaves out
   * @throws Refusal where it may do either
   */
  boolean leavesOut(int at) {
    if (everyThingBefore(at)) {
      return true;
    }
    int next = at + 1;
    while (ARTICLES.contains(reader.word(next))) {
      next++;
    }
    int name = reader.names().name(next, 1);
    boolean person = name == 0 && reader.names().isPerson(next);
    int after = next + (person ? 1 : name);
    if (name == 0 && !person || Filler.isDone(reader.word(after))) {
      return false; // "on oak but clean", "that Runa judged but Mats burned"
    }
    for (int i = 0; i < at; i++) {
      if (EVERY.contains(reader.word(i))) {
        return true; // "all clean patches but the oak ones"
      }
    }
    throw Refusal.usage(
        "I cannot tell whether \"but %s\" asks for it or leaves it out; write \"and %s\" or \"except %s\"."
            .formatted(said(next, after), said(next, after), said(next, after)));
  }

  private String said(int from, int to) {
    StringBuilder text = new StringBuilder();
    for (int i = from; i < to; i++) {
      text.append(i > from ? " " : "").append(reader.whole(i).typed());
    }
    return text.toString();
  }

  /** Whether "all", "any board" or "everyone" ends before a word. */
  private boolean everyThingBefore(int at) {
    int before = at - 1;
    while (before > 0 && Filler.isNoun(reader.word(before))) {
      before--;
    }
    if (reader.word(before).equals("one") || reader.word(before).equals("thing")) {
      before--;
    }
    if (NONE.contains(reader.word(before))) {
      throw Refusal.usage(
          "I cannot read \"%s\"; ask for what you want by its name, without \"%s\"."
              .formatted(said(before, at + 1), reader.whole(before).typed()));
    }
    return EVERY.contains(reader.word(before));
  }

  /** "Other woods than pine"; what is compared with a number was read with it. */
  private int than(int at) {
    for (int before = at - 1; before >= Math.max(0, at - NEAR); before--) {
      if (OTHER.contains(reader.word(before))) {
        return left(1);
      }
    }
    throw Refusal.usage(
        "After \"than\" must come a number, such as slower than 20 mm/s; \"%s\" is none."
            .formatted(at + 1 < reader.size() ? reader.whole(at + 1).typed() : ""));
  }

  /** "Outside 40 to 60 %", "out of the range 40 to 60 %"; elsewhere it is a place. */
  private int outside(int at) {
    int next = at + 1;
    boolean ofRange = reader.word(at).equals("outside");
    while (Set.of("of", "the", "range", "window", "span", "between").contains(reader.word(next))) {
      ofRange |= RANGE.contains(reader.word(next));
      next++;
    }
    if (!ofRange || !reader.isNumber(next) && !reader.timeAt(next)) {
      return 0; // "2 out of 3 passes"
    }
    reader.add(Denial.NOT);
    return reader.word(next - 1).equals("between") ? next - 1 - at : next - at;
  }

  /** "Failed to clear" did not clear; "failed" alone is an outcome. */
  private int failing(int at) {
    if (!reader.word(at + 1).equals("to") || OutcomeWords.length(reader, at + 2) == 0) {
      return 0;
    }
    reader.add(Denial.NOT);
    return 2;
  }
}
