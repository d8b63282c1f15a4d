package charline.stat.interval;

/** One end of an interval: a number, or the honest answer that there is none. */
public sealed interface Bound {

  /** A bound at a finite value. */
  record At(double value) implements Bound {
    public At {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "A bound must be a finite number, not " + value + "; say Unbounded where none exists.");
      }
    }
  }

  /** The data set no limit on this side. */
  record Unbounded() implements Bound {}

  static Bound at(double value) {
    return new At(value);
  }

  static Bound unbounded() {
    return new Unbounded();
  }
}
