package charline.stat.survival;

import java.util.stream.IntStream;

/**
 * Times known to lie between two looks: after the last look without the event, and at or before the
 * first look with it.
 */
public final class CensoredTimes {
  /** How much is known of one time. */
  public enum Kind {
    EXACT,
    /** The event was there at the first look. */
    LEFT,
    /** The event was never seen. */
    RIGHT,
    INTERVAL
  }

  private final double[] after;
  private final double[] by;

  private CensoredTimes(double[] after, double[] by) {
    this.after = after;
    this.by = by;
  }

  /**
   * Times between looks.
   *
   * @param after last look without the event; 0 where there was none (left censored)
   * @param by first look with the event, positive infinity where it was never seen (right
   *     censored); equal to {@code after} where the time is known exactly
   * @throws IllegalArgumentException if the lengths differ, there are no times, or a pair is out of
   *     order or says nothing
   */
  public static CensoredTimes between(double[] after, double[] by) {
    if (after.length != by.length) {
      throw new IllegalArgumentException(
          "Both ends must have one length, not %d and %d.".formatted(after.length, by.length));
    }
    if (after.length == 0) {
      throw new IllegalArgumentException("There must be at least one time, not none.");
    }
    for (int i = 0; i < after.length; i++) {
      boolean ordered = after[i] >= 0 && by[i] >= after[i] && by[i] > 0;
      boolean saysSomething = after[i] > 0 || by[i] < Double.POSITIVE_INFINITY;
      if (!ordered || !saysSomething || Double.isInfinite(after[i])) {
        throw new IllegalArgumentException(
            "A time must lie after one look and by a later one, not after %s and by %s in row %d; correct the row or leave it out."
                .formatted(after[i], by[i], i + 1));
      }
    }
    return new CensoredTimes(after.clone(), by.clone());
  }

  public int count() {
    return after.length;
  }

  /** Last look without the event; 0 for none. */
  public double after(int row) {
    return after[row];
  }

  /** First look with the event; positive infinity for never. */
  public double by(int row) {
    return by[row];
  }

  public Kind kind(int row) {
    if (after[row] == by[row]) {
      return Kind.EXACT;
    }
    if (after[row] == 0) {
      return Kind.LEFT;
    }
    return Double.isInfinite(by[row]) ? Kind.RIGHT : Kind.INTERVAL;
  }

  /** How many times are of a kind. */
  public int count(Kind kind) {
    return (int) IntStream.range(0, after.length).filter(i -> kind(i) == kind).count();
  }
}
