package charline.ask;

import charline.ask.Piece.Coating;
import charline.ask.Piece.Denial;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Lie;
import charline.ask.Piece.Sight;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Coats;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Underneath;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Joins coats that a question lays over one another. */
final class Stacks {
  private static final String STACK = "stack";

  private Stacks() {}

  /** Coats that lie over one another become one fact. */
  static List<Piece> stacked(List<Piece> pieces) {
    boolean several = pieces.stream().filter(Coating.class::isInstance).count() > 1;
    List<Piece> done = new ArrayList<>();
    int at = 0;
    while (at < pieces.size()) {
      Piece piece = pieces.get(at);
      if (piece instanceof Coating coating) {
        at = coating(pieces, at, coating, several, done);
      } else if (piece == Lie.OVER_ALL && next(pieces, at) instanceof Coating below) {
        done.add(new Fact(new Underneath(below.families()), "under", false));
        at += 2;
      } else {
        if (!(piece instanceof Lie lie)) {
          done.add(piece);
        } else {
          requireCoats(lie, next(pieces, at));
        }
        at++;
      }
    }
    return done;
  }

  /** "Dark over pale" names no coats, so that it must not be passed over. */
  private static void requireCoats(Lie lie, Piece next) {
    boolean tone = next instanceof Fact fact && fact.group() == Attribute.TONE;
    if (lie == Lie.UNDER || lie == Lie.OVER && (tone || next instanceof Sight)) {
      throw Refusal.usage(
          "I know \"%s\" between coating families alone, as \"latex over primer\"; name both."
              .formatted(lie == Lie.UNDER ? "under" : "over"));
    }
  }

  private static Piece next(List<Piece> pieces, int at) {
    return at >= 0 && at + 1 < pieces.size() ? pieces.get(at + 1) : null;
  }

  private static int coating(
      List<Piece> pieces, int from, Coating first, boolean several, List<Piece> done) {
    List<Set<String>> stack = new ArrayList<>(List.of(first.families()));
    int at = from + 1;
    while (at + 1 < pieces.size()
        && pieces.get(at) instanceof Lie lie
        && (lie == Lie.OVER || lie == Lie.ON || lie == Lie.UNDER)
        && pieces.get(at + 1) instanceof Coating coating) {
      stack.add(lie == Lie.UNDER ? 0 : stack.size(), coating.families());
      at += 2;
    }
    Piece before = from > 0 ? pieces.get(from - 1) : null;
    Piece beforeThat = from > 1 ? pieces.get(from - 2) : null;
    Piece after = at < pieces.size() ? pieces.get(at) : null;
    if (stack.size() > 1) {
      done.add(new Fact(new Coats(stack, true, false), STACK, true));
      return at;
    }
    if (after == Lie.UNDER) {
      done.add(new Fact(new Underneath(first.families()), "under", false));
      return at + 1;
    }
    if (before instanceof Denial
        && (after == Lie.OVER || after == Lie.ON)
        && next(pieces, at) instanceof Fact wood
        && wood.group() == Attribute.WOOD) {
      Condition family = new Named(Attribute.FAMILY, first.families(), first.said());
      done.add(new Fact(Condition.all(List.of(family, wood.condition())), "pair", false));
      return at + 2;
    }
    boolean with = before == Lie.WITH;
    if (after == Lie.INSIDE || with && (several || beforeThat instanceof Denial)) {
      done.add(new Fact(Coats.anywhere(first.families()), "coat", false));
      return after == Lie.INSIDE ? at + 1 : at;
    }
    done.add(
        new Fact(
            new Named(Attribute.FAMILY, first.families(), first.said()), Attribute.FAMILY, true));
    return after == Lie.TOP ? at + 1 : at;
  }
}
