package charline.ask;

import charline.log.search.Condition;
import charline.log.search.Condition.Marks;
import charline.log.search.NumberRange;
import java.util.Set;

/** What some words of a question were read as, before and, or and not join them. */
sealed interface Piece {
  /**
   * Something that a patch meets or not.
   *
   * @param group what it is about: facts of one group widen one another
   * @param single whether a patch has one of the group alone, as it has one wood
   */
  record Fact(Condition condition, Object group, boolean single) implements Piece {}

  /** A coating family. */
  record Coating(Set<String> families, String said) implements Piece {}

  /** Marks of a reading. */
  record Sight(Marks marks) implements Piece {}

  /**
   * A number of passes.
   *
   * @param took whether they are those it took
   */
  record Passes(NumberRange range, boolean took) implements Piece {}

  /** And, or, but, a comma. */
  enum Joint implements Piece {
    AND,
    OR,
    COMMA
  }

  /** Not, never, except. */
  enum Denial implements Piece {
    NOT,
    NEVER,
    EXCEPT
  }

  /** How coats lie. */
  enum Lie implements Piece {
    OVER,
    /** Whatever lies over the next one. */
    OVER_ALL,
    ON,
    UNDER,
    WITH,
    INSIDE,
    TOP
  }

  /** So at some reading, not only at the last one. */
  enum Once implements Piece {
    EVER
  }

  /** It took so many passes. */
  enum Effort implements Piece {
    TOOK
  }
}
