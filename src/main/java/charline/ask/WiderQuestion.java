package charline.ask;

import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.All;
import charline.log.search.Condition.Coats;
import charline.log.search.Condition.Either;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Not;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** A question once more, of coats anywhere in the stack where none was found outermost. */
public final class WiderQuestion {
  private WiderQuestion() {}

  /** The wider question, with a sentence that says so; empty where it names no coating. */
  public static Optional<Question> of(Question question) {
    Condition wider = replaced(question.condition(), WiderQuestion::anywhere);
    return wider.equals(question.condition())
        ? Optional.empty()
        : Optional.of(
            question.about(
                wider,
                "No such patch has that coating outermost, so it is looked for under other coats"
                    + " too."));
  }

  private static Condition anywhere(Condition leaf) {
    if (leaf instanceof Named named && named.attribute() == Attribute.FAMILY) {
      return Coats.anywhere(named.values());
    }
    return leaf instanceof Coats coats && coats.top()
        ? new Coats(coats.families(), false, coats.bottom())
        : leaf;
  }

  /** A condition with other leaves. */
  static Condition replaced(Condition condition, UnaryOperator<Condition> leaf) {
    if (condition instanceof All all) {
      return new All(all.parts().stream().map(p -> replaced(p, leaf)).toList());
    }
    if (condition instanceof Either any) {
      return new Either(any.parts().stream().map(p -> replaced(p, leaf)).toList());
    }
    return condition instanceof Not ? condition : leaf.apply(condition);
  }

  /** The same question whatever was seen: everything that was tried there. */
  public static Condition whateverWasSeen(Condition condition) {
    if (condition instanceof Not not && not.part() instanceof Condition.Seen) {
      return Condition.EVERY;
    }
    if (condition instanceof All all) {
      return Condition.all(all.parts().stream().map(WiderQuestion::whateverWasSeen).toList());
    }
    if (condition instanceof Either any) {
      return Condition.either(any.parts().stream().map(WiderQuestion::whateverWasSeen).toList());
    }
    return condition instanceof Condition.Seen ? Condition.EVERY : condition;
  }
}
