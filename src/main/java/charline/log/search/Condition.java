package charline.log.search;

import charline.trial.Mark;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Which patches are wanted: a tree of what can be asked of one patch. */
public sealed interface Condition {
  /** What every patch meets. */
  Condition EVERY = new All(List.of());

  /** All of these. */
  record All(List<Condition> parts) implements Condition {
    public All {
      parts = List.copyOf(parts);
    }
  }

  /** One of these or several. */
  record Either(List<Condition> parts) implements Condition {
    public Either {
      parts = List.copyOf(parts);
    }
  }

  /** Not this. */
  record Not(Condition part) implements Condition {}

  /**
   * One of these words; capitals make no difference.
   *
   * @param said what they are called together, such as "pine" for all its species
   */
  record Named(Attribute attribute, Set<String> values, String said) implements Condition {
    public Named {
      values = Set.copyOf(values);
    }
  }

  /**
   * A finish with these coats, one family or another at each step, each somewhere under the one
   * before.
   *
   * @param top whether the first must be the outermost
   * @param bottom whether the last must lie on the wood
   */
  record Coats(List<Set<String>> families, boolean top, boolean bottom) implements Condition {
    public Coats {
      families = families.stream().map(Set::copyOf).toList();
    }

    /** A finish that has such a coat anywhere. */
    public static Coats anywhere(Set<String> families) {
      return new Coats(List.of(families), false, false);
    }
  }

  /** A finish that has such a coat under its outermost one. */
  record Underneath(Set<String> families) implements Condition {
    public Underneath {
      families = Set.copyOf(families);
    }
  }

  /** Burned at or after one moment, and before another. */
  record Burned(Optional<OffsetDateTime> since, Optional<OffsetDateTime> until)
      implements Condition {
    /** What is in both. */
    public Burned and(Burned other) {
      return new Burned(
          Stream.concat(since.stream(), other.since.stream()).max(OffsetDateTime::compareTo),
          Stream.concat(until.stream(), other.until.stream()).min(OffsetDateTime::compareTo));
    }
  }

  /** Judged likewise, in one reading at least. */
  record Judged(Optional<OffsetDateTime> since, Optional<OffsetDateTime> until)
      implements Condition {}

  /** A number within a range; never met where the number is not known. */
  record Measured(Amount amount, NumberRange range) implements Condition {}

  /** Which reading counts. */
  enum Which {
    /** The last one. */
    LAST,
    /** Any one. */
    SOME,
    /** The first that shows the marks. */
    FIRST
  }

  /** Marks seen in a reading, after a number of passes in a range. */
  record Seen(Which which, Marks marks, NumberRange passes) implements Condition {
    /** Seen in the last reading, after however many passes. */
    public static Seen last(Marks marks) {
      return new Seen(Which.LAST, marks, NumberRange.ANY);
    }
  }

  /**
   * Marks of a reading.
   *
   * @param with marks that it has
   * @param without marks that it has not
   */
  record Marks(Set<Mark> with, Set<Mark> without) {
    public static final Marks ANY = new Marks(Set.of(), Set.of());

    /** The finish is gone: no residue, and no colour left in the grain. */
    public static final Marks CLEARED = new Marks(Set.of(), Set.of(Mark.RESIDUE, Mark.TINT));

    public static final Marks NOT_CLEAN = new Marks(Set.of(), Set.of(Mark.CLEAN));

    public static final Marks NOT_CHARRED = new Marks(Set.of(), Set.of(Mark.CHAR));

    public Marks {
      with = Set.copyOf(with);
      without = Set.copyOf(without);
    }

    public static Marks of(Mark mark) {
      return new Marks(Set.of(mark), Set.of());
    }

    /** Both. */
    public Marks and(Marks other) {
      return new Marks(union(with, other.with), union(without, other.without));
    }

    /** Whether an outcome can be like that. */
    public boolean possible() {
      boolean clean = with.contains(Mark.CLEAN);
      return with.stream().noneMatch(without::contains) && (!clean || with.size() == 1);
    }

    /** Whether an outcome is like that. */
    public boolean shownBy(Set<Mark> outcome) {
      return outcome.containsAll(with) && outcome.stream().noneMatch(without::contains);
    }

    private static Set<Mark> union(Set<Mark> a, Set<Mark> b) {
      EnumSet<Mark> all = EnumSet.noneOf(Mark.class);
      all.addAll(a);
      all.addAll(b);
      return all;
    }
  }

  /** Something that a patch has or has not. */
  record Has(Feature feature) implements Condition {}

  /** A note, on the patch or a reading, that has this in it. */
  record Noted(String text) implements Condition {}

  /** Both this and another. */
  default Condition and(Condition other) {
    return all(List.of(this, other));
  }

  /** All of them, without needless nesting. */
  static Condition all(List<Condition> parts) {
    List<Condition> flat =
        parts.stream()
            .flatMap(p -> p instanceof All all ? all.parts().stream() : Stream.of(p))
            .distinct()
            .toList();
    return flat.size() == 1 ? flat.get(0) : new All(flat);
  }

  /** One of them at least, without needless nesting. */
  static Condition either(List<Condition> parts) {
    List<Condition> flat =
        parts.stream()
            .flatMap(p -> p instanceof Either any ? any.parts().stream() : Stream.of(p))
            .distinct()
            .toList();
    return flat.size() == 1 ? flat.get(0) : new Either(flat);
  }

  /** One of these words. */
  static Named named(Attribute attribute, String... values) {
    return new Named(attribute, new TreeSet<>(Arrays.asList(values)), String.join(" or ", values));
  }

  /** Every leaf. */
  default Stream<Condition> leaves() {
    if (this instanceof All all) {
      return all.parts().stream().flatMap(Condition::leaves);
    }
    if (this instanceof Either any) {
      return any.parts().stream().flatMap(Condition::leaves);
    }
    return this instanceof Not not ? not.part().leaves() : Stream.of(this);
  }
}
