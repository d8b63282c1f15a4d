package charline.ask;

import charline.ask.Piece.Denial;
import charline.ask.Piece.Effort;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Joint;
import charline.ask.Piece.Once;
import charline.ask.Piece.Passes;
import charline.ask.Piece.Sight;
import charline.log.search.Amount;
import charline.log.search.Condition;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Marks;
import charline.log.search.Condition.Measured;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Not;
import charline.log.search.Condition.Seen;
import charline.log.search.Condition.Which;
import charline.log.search.NumberRange;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Joins what a question says by and, or and not.
 *
 * <p>Words of one kind widen ("pine oak": either, as a board is of one wood), those of different
 * kinds narrow. Marks must all be there, unless no patch can have them all. Or between words of one
 * kind binds them; between others it parts the question into clauses, and so does and where both
 * sides name, say, a wood: "latex on pine and shellac on oak" asks for two kinds of patches. What
 * one clause alone says counts for all. Not denies what comes next, with all that is joined to it.
 */
final class Clauses {
  private static final String MARKS = "marks";
  private static final String PASSES = "passes";

  /**
   * A part of a clause.
   *
   * @param joint what stood before it, null where nothing did
   */
  private record Part(Object group, boolean single, boolean denied, Joint joint, Object what) {
    boolean likeTo(Part other) {
      return group.equals(other.group) && denied == other.denied;
    }

    Part of(Object other) {
      return new Part(group, single, denied, joint, other);
    }
  }

  /** A mark or passes, which are joined with one another last. */
  private record Sighting(List<Marks> anyOf, boolean ever) {}

  private record Count(NumberRange range, boolean took) {}

  private Clauses() {}

  static Condition joined(List<Piece> pieces) {
    List<Part> parts = merged(parts(Stacks.stacked(pieces)));
    List<List<Part>> clauses = split(parts);
    if (clauses.isEmpty()) {
      return Condition.EVERY;
    }
    if (clauses.size() == 1) {
      return clause(clauses.get(0));
    }
    Set<Object> repeated =
        clauses.stream()
            .flatMap(c -> c.stream().map(Part::group).distinct())
            .collect(Collectors.groupingBy(g -> g, Collectors.counting()))
            .entrySet()
            .stream()
            .filter(e -> e.getValue() > 1)
            .map(e -> e.getKey())
            .collect(Collectors.toSet());
    List<Part> shared = new ArrayList<>();
    if (!repeated.isEmpty()) {
      for (List<Part> clause : clauses) {
        for (Part part : clause) {
          if (!repeated.contains(part.group())) {
            shared.add(part);
          }
        }
        clause.removeAll(shared);
      }
    }
    return Condition.either(
        clauses.stream()
            .map(
                own -> {
                  List<Part> all = new ArrayList<>(own);
                  all.addAll(shared);
                  return clause(all);
                })
            .toList());
  }

  private static List<Part> parts(List<Piece> pieces) {
    List<Part> parts = new ArrayList<>();
    Joint joint = null;
    Denial denial = null;
    boolean took = false;
    boolean ever = false;
    boolean kept = false; // a denial goes on over "or" and "and" within one kind
    for (Piece piece : pieces) {
      if (piece instanceof Joint now) {
        joint = joint == Joint.OR ? joint : now == Joint.COMMA && joint != null ? joint : now;
        continue;
      }
      if (piece instanceof Denial now) {
        denial = denial != null && !kept && denial != Denial.EXCEPT ? null : now;
        kept = false;
        continue;
      }
      if (piece == Once.EVER) {
        ever = true;
        continue;
      }
      if (piece == Effort.TOOK) {
        took = true;
        continue;
      }
      Part part = part(piece, joint, denial, took, ever);
      ever = ever && !(piece instanceof Sight);
      took = took && !(piece instanceof Passes);
      if (kept && denial != null && !goesOn(parts, part)) {
        denial = null;
        part = part(piece, joint, null, took, ever);
      }
      kept = denial != null;
      parts.add(part);
      joint = null;
    }
    return parts;
  }

  private static boolean goesOn(List<Part> parts, Part part) {
    return !parts.isEmpty()
        && part.joint() != null
        && parts.get(parts.size() - 1).group().equals(part.group());
  }

  private static Part part(Piece piece, Joint joint, Denial denial, boolean took, boolean ever) {
    boolean denied = denial != null;
    if (piece instanceof Sight sight) {
      return new Part(
          MARKS,
          false,
          denied,
          joint,
          new Sighting(List.of(sight.marks()), denial == Denial.NEVER || ever));
    }
    if (piece instanceof Passes passes) {
      return new Part(
          PASSES, false, denied, joint, new Count(passes.range(), passes.took() || took));
    }
    Fact fact = (Fact) piece;
    return new Part(fact.group(), fact.single(), denied, joint, fact.condition());
  }

  /** Neighbours of one kind become one part. */
  private static List<Part> merged(List<Part> parts) {
    List<Part> done = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      Part last = done.isEmpty() ? null : done.get(done.size() - 1);
      if (last == null || !last.likeTo(part)) {
        done.add(part);
        continue;
      }
      boolean or = part.joint() == Joint.OR || part.joint() == Joint.COMMA && endsInOr(parts, i);
      done.set(done.size() - 1, last.of(both(last, part, or)));
    }
    return done;
  }

  /** "tint, char or residue": the last joint of a list tells of all. */
  private static boolean endsInOr(List<Part> parts, int from) {
    for (int i = from + 1; i < parts.size() && parts.get(i).likeTo(parts.get(from)); i++) {
      if (parts.get(i).joint() != Joint.COMMA) {
        return parts.get(i).joint() == Joint.OR;
      }
    }
    return false;
  }

  private static Object both(Part a, Part b, boolean or) {
    if (a.what() instanceof Sighting first && b.what() instanceof Sighting second) {
      return sighting(first, second, or || a.denied(), b.joint() == Joint.AND);
    }
    if (a.what() instanceof Count first && b.what() instanceof Count second) {
      NumberRange narrowed = first.range().and(second.range());
      return new Count(narrowed, first.took() || second.took());
    }
    Condition first = (Condition) a.what();
    Condition second = (Condition) b.what();
    if (a.denied()) {
      return Condition.either(List.of(first, second));
    }
    boolean widen =
        or
            || a.single()
            || first instanceof Measured x
                && second instanceof Measured y
                && y.range().low() > x.range().high() | x.range().low() > y.range().high()
            || first instanceof Burned p
                && second instanceof Burned q
                && b.joint() != null
                && !isOpen(p)
                && !isOpen(q);
    if (!widen && first instanceof Burned p && second instanceof Burned q) {
      return p.and(q);
    }
    return widen ? widened(first, second) : Condition.all(List.of(first, second));
  }

  private static boolean isOpen(Burned burned) {
    return burned.since().isEmpty() || burned.until().isEmpty();
  }

  private static Condition widened(Condition first, Condition second) {
    if (first instanceof Named a && second instanceof Named b && a.attribute() == b.attribute()) {
      Set<String> values = new HashSet<>(a.values());
      values.addAll(b.values());
      return new Named(
          a.attribute(),
          values,
          a.said().equals(b.said()) ? a.said() : a.said() + " or " + b.said());
    }
    return Condition.either(List.of(first, second));
  }

  private static Sighting sighting(Sighting a, Sighting b, boolean or, boolean and) {
    boolean ever = a.ever() || b.ever();
    if (!or) {
      List<Marks> all = new ArrayList<>();
      a.anyOf().forEach(x -> b.anyOf().forEach(y -> all.add(x.and(y))));
      if (all.stream().allMatch(Marks::possible)) {
        return new Sighting(all, ever);
      }
      if (!and) {
        throw Refusal.usage(
            "No patch can match: clean must be the only mark of an outcome; ask for one or the"
                + " other, as \"clean or char\".");
      }
    }
    List<Marks> any = new ArrayList<>(a.anyOf());
    any.addAll(b.anyOf());
    return new Sighting(any, ever);
  }

  private static List<List<Part>> split(List<Part> parts) {
    List<List<Part>> clauses = new ArrayList<>();
    List<Part> now = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      boolean parting =
          !now.isEmpty()
              && (part.joint() == Joint.OR
                  || part.joint() != null && repeats(now, parts.subList(i, parts.size())));
      if (parting) {
        clauses.add(now);
        now = new ArrayList<>();
      }
      now.add(part);
    }
    if (!now.isEmpty()) {
      clauses.add(now);
    }
    return clauses;
  }

  /** Whether what comes names another wood, say, up to the next joint, where one was named. */
  private static boolean repeats(List<Part> before, List<Part> rest) {
    for (int i = 0; i < rest.size() && (i == 0 || rest.get(i).joint() == null); i++) {
      Part part = rest.get(i);
      boolean there =
          before.stream()
              .anyMatch(
                  b ->
                      !b.denied()
                          && !part.denied()
                          && b.group().equals(part.group())
                          && (b.single() || clash(b, part)));
      if (there) {
        return true;
      }
    }
    return false;
  }

  private static boolean clash(Part a, Part b) {
    if (a.what() instanceof Sighting x && b.what() instanceof Sighting y) {
      return x.anyOf().stream()
          .noneMatch(m -> y.anyOf().stream().anyMatch(n -> m.and(n).possible()));
    }
    return a.what() instanceof Burned p && b.what() instanceof Burned q && !isOpen(p) && !isOpen(q);
  }

  /** All of a clause; what is of one kind widens, wherever it stands. */
  private static Condition clause(List<Part> parts) {
    List<Condition> all = new ArrayList<>();
    List<Part> waiting = new ArrayList<>(parts);
    Optional<Part> count =
        waiting.stream().filter(p -> p.what() instanceof Count && !p.denied()).findFirst();
    boolean combined = false;
    while (!waiting.isEmpty()) {
      Part part = waiting.remove(0);
      for (int i = 0; i < waiting.size(); i++) {
        if (waiting.get(i).likeTo(part)) {
          part = part.of(both(part, waiting.remove(i--), false));
        }
      }
      if (part.what() instanceof Sighting sighting) {
        Part seen = part;
        Optional<Count> passes =
            count.filter(c -> goTogether(parts, c, seen)).map(c -> (Count) c.what());
        combined |= passes.isPresent();
        all.add(seen(sighting, part.denied(), passes));
      } else if (part.what() instanceof Count passes) {
        if (part.denied()) {
          all.add(new Not(made(passes)));
        }
      } else {
        Condition condition = (Condition) part.what();
        all.add(part.denied() ? new Not(condition) : condition);
      }
    }
    if (count.isPresent() && !combined) {
      all.add(made((Count) count.get().what()));
    }
    return Condition.all(all);
  }

  /** Passes are those of what was seen; of what was not, if nothing stands between the two. */
  private static boolean goTogether(List<Part> parts, Part count, Part seen) {
    if (!seen.denied()) {
      return true;
    }
    if (parts.stream().anyMatch(p -> p.what() instanceof Sighting && !p.denied())) {
      return false; // "cleared in one pass without char"
    }
    for (int i = 1; i < parts.size(); i++) {
      Object a = parts.get(i - 1).group();
      Object b = parts.get(i).group();
      if (Set.of(a, b.equals(a) ? "" : b).equals(Set.of(MARKS, PASSES))) {
        return parts.get(i).joint() == null;
      }
    }
    return false;
  }

  private static Condition made(Count count) {
    return count.took()
        ? new Seen(Which.FIRST, Marks.CLEARED, count.range())
        : new Measured(Amount.PASSES, count.range());
  }

  private static Condition seen(Sighting sighting, boolean denied, Optional<Count> passes) {
    List<Condition> any = new ArrayList<>();
    for (Marks marks : sighting.anyOf()) {
      Which which =
          passes.isPresent()
              ? passes.get().took() ? Which.FIRST : Which.SOME
              : sighting.ever() ? Which.SOME : Which.LAST;
      any.add(new Seen(which, marks, passes.map(Count::range).orElse(NumberRange.ANY)));
    }
    Condition made = Condition.either(any);
    if (!denied) {
      return made;
    }
    return passes.isEmpty()
        ? new Not(made)
        : Condition.all(
            List.of(new Seen(Which.SOME, Marks.ANY, passes.get().range()), new Not(made)));
  }

  /** Whether all of that is over before it begins. */
  static void requirePossible(Condition condition) {
    condition
        .leaves()
        .filter(Burned.class::isInstance)
        .map(Burned.class::cast)
        .filter(b -> b.since().isPresent() && b.until().isPresent())
        .filter(b -> !b.since().get().isBefore(b.until().get()))
        .findFirst()
        .ifPresent(
            b -> {
              throw Refusal.usage(
                  "No time is both on or after %s and before %s; give one period."
                      .formatted(b.since().get().toLocalDate(), b.until().get().toLocalDate()));
            });
  }
}
