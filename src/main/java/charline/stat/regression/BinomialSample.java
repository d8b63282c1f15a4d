package charline.stat.regression;

import charline.stat.linear.Design;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Events out of trials, one pair per row of a design. An outcome of one trial is 0 or 1; rows with
 * equal covariates may be joined or left apart, and give the same fit.
 *
 * <p>Two rows may belong to one unit that was looked at twice and changed in between: {@link
 * #withBrackets}.
 */
public final class BinomialSample {
  private final Design design;
  private final int[] events;
  private final int[] trials;
  private final List<Bracket> brackets;

  private BinomialSample(Design design, int[] events, int[] trials, List<Bracket> brackets) {
    this.design = design;
    this.events = events;
    this.trials = trials;
    this.brackets = brackets;
  }

  /**
   * One trial per row.
   *
   * @param outcomes 1 where the event was seen, 0 where not; one per row
   * @throws IllegalArgumentException if the lengths differ or an outcome is neither 0 nor 1
   */
  public static BinomialSample of(Design design, int... outcomes) {
    requireLength("outcomes", outcomes.length, design);
    for (int i = 0; i < outcomes.length; i++) {
      if (outcomes[i] != 0 && outcomes[i] != 1) {
        throw new IllegalArgumentException(
            "An outcome must be 0 or 1, not %d in row %d; give counts with grouped(...)."
                .formatted(outcomes[i], i + 1));
      }
    }
    int[] trials = new int[outcomes.length];
    Arrays.fill(trials, 1);
    return new BinomialSample(design, outcomes.clone(), trials, List.of());
  }

  /**
   * Several trials per row.
   *
   * @param events 0 to {@code trials}, one per row
   * @param trials at least 1, one per row
   * @throws IllegalArgumentException if the lengths differ or a count is impossible
   */
  public static BinomialSample grouped(Design design, int[] events, int[] trials) {
    requireLength("event counts", events.length, design);
    requireLength("trial counts", trials.length, design);
    for (int i = 0; i < events.length; i++) {
      if (trials[i] < 1) {
        throw new IllegalArgumentException(
            "Trials must be 1 or more, not %d in row %d; leave the row out."
                .formatted(trials[i], i + 1));
      }
      if (events[i] < 0 || events[i] > trials[i]) {
        throw new IllegalArgumentException(
            "Events must be between 0 and the %d trials, not %d in row %d."
                .formatted(trials[i], events[i], i + 1));
      }
    }
    return new BinomialSample(design, events.clone(), trials.clone(), List.of());
  }

  /**
   * Says which rows are two looks at one unit whose event came in between. Taken as independent
   * they would make every slope too flat; see {@link IntervalCensored}.
   *
   * @param pairs each row at most once
   * @throws IllegalArgumentException if a row has more than one trial, the event does not come
   *     between the two, or the covariates of the two are equal
   */
  public BinomialSample withBrackets(List<Bracket> pairs) {
    for (Bracket pair : pairs) {
      boolean between =
          trials[pair.before()] == 1
              && trials[pair.after()] == 1
              && events[pair.before()] == 0
              && events[pair.after()] == 1;
      if (!between || Arrays.equals(design.row(pair.before()), design.row(pair.after()))) {
        throw new IllegalArgumentException(
            "An event must come between two looks at different covariates, not so in rows %d and %d."
                .formatted(pair.before() + 1, pair.after() + 1));
      }
    }
    if (pairs.stream().flatMapToInt(p -> IntStream.of(p.before(), p.after())).distinct().count()
        < 2L * pairs.size()) {
      throw new IllegalArgumentException("A row must belong to one unit, not to two.");
    }
    return new BinomialSample(design, events, trials, List.copyOf(pairs));
  }

  /** Rows that are two looks at one unit. */
  public List<Bracket> brackets() {
    return brackets;
  }

  private static void requireLength(String what, int length, Design design) {
    if (length != design.rowCount()) {
      throw new IllegalArgumentException(
          "There must be one of the %s per row: %d rows, but %d %s."
              .formatted(what, design.rowCount(), length, what));
    }
  }

  public Design design() {
    return design;
  }

  public int rowCount() {
    return events.length;
  }

  public int events(int row) {
    return events[row];
  }

  public int trials(int row) {
    return trials[row];
  }

  /** Events over all rows. */
  public int totalEvents() {
    return IntStream.of(events).sum();
  }

  /** Trials over all rows. */
  public int totalTrials() {
    return IntStream.of(trials).sum();
  }

  /**
   * The sample of chosen rows; a bracket stays where both its rows do.
   *
   * @param indices rows to keep, counted from 0
   * @throws IllegalArgumentException if their design cannot be solved
   */
  public BinomialSample rows(int... indices) {
    return new BinomialSample(
        design.rows(indices),
        IntStream.of(indices).map(i -> events[i]).toArray(),
        IntStream.of(indices).map(i -> trials[i]).toArray(),
        bracketsAmong(indices));
  }

  private List<Bracket> bracketsAmong(int[] indices) {
    List<Integer> kept = IntStream.of(indices).boxed().toList();
    return brackets.stream()
        .map(pair -> new int[] {kept.indexOf(pair.before()), kept.indexOf(pair.after())})
        .filter(place -> place[0] >= 0 && place[1] >= 0)
        .map(place -> new Bracket(place[0], place[1]))
        .toList();
  }

  /** The sample without one row, counted from 0. */
  public BinomialSample without(int row) {
    return rows(IntStream.range(0, rowCount()).filter(i -> i != row).toArray());
  }

  /** Sum of the log binomial coefficients: 0 where every row has one trial. */
  public double logCoefficients() {
    double sum = 0;
    for (int i = 0; i < events.length; i++) {
      sum += CombinatoricsUtils.binomialCoefficientLog(trials[i], events[i]);
    }
    return sum;
  }

  /**
   * Two rows that are two looks at one unit, whose event came in between.
   *
   * @param before the row without the event, counted from 0
   * @param after the row with it
   */
  public record Bracket(int before, int after) {}
}
