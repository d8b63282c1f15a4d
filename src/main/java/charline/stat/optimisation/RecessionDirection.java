package charline.stat.optimisation;

import charline.stat.linear.Vectors;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.PivotSelectionRule;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;

/**
 * Looks for a direction along which a log-concave likelihood never falls. If there is one, the
 * likelihood has no finite maximum (Albert and Anderson 1984, Biometrika 71:1-10, theorems 1 to 3;
 * Silvapulle 1981, JRSS B 43:310-313, for links other than the logit). The search is a linear
 * programme, so the answer does not hang on when an iteration was stopped.
 *
 * <p>Each observation gives a row v; along a direction d it must hold that v·d ≥ 0, or v·d = 0
 * where the observation pulls both ways. Rows are scaled to length 1; sums up to 1e-7 count as
 * zero.
 */
public final class RecessionDirection {
  private static final double ZERO = 1e-7;

  private RecessionDirection() {}

  /**
   * A direction in which at least one row rises and none falls, of largest total rise in the box
   * from -1 to 1; empty if there is none, and then the likelihood has a finite maximum.
   *
   * @param neverFalling rows v with v·d ≥ 0; each as long as d
   * @param level rows v with v·d = 0
   */
  public static Optional<double[]> direction(double[][] neverFalling, double[][] level) {
    int width = neverFalling.length > 0 ? neverFalling[0].length : level[0].length;
    double[] total = new double[width];
    Cuts cuts = new Cuts(box(width, width));
    distinct(neverFalling)
        .forEach(
            (row, count) -> {
              double[] v = row.values();
              for (int j = 0; j < width; j++) {
                total[j] += count * v[j];
              }
              cuts.add(v);
            });
    for (Row row : distinct(level).keySet()) {
      cuts.add(row.values());
      cuts.add(negated(row.values()));
    }
    double[] best = cuts.maximise(total, ZERO);
    return Vectors.dot(total, best) > ZERO ? Optional.of(best) : Optional.empty();
  }

  /**
   * Whether some direction makes every row rise: v·d &gt; 0 for all.
   *
   * @param rows at least one
   */
  public static boolean allCanRise(double[][] rows) {
    int width = rows[0].length;
    Cuts cuts = new Cuts(box(width, width + 1));
    for (Row row : distinct(rows).keySet()) {
      double[] withMargin = Arrays.copyOf(row.values(), width + 1);
      withMargin[width] = -1;
      cuts.add(withMargin);
    }
    double[] margin = new double[width + 1];
    margin[width] = 1;
    cuts.box.add(new LinearConstraint(margin, Relationship.LEQ, 1));
    return cuts.maximise(margin, ZERO)[width] > ZERO;
  }

  /**
   * Rows of which few decide. The programme is solved for some of them; those that its answer
   * breaks join, until none is broken. Every answer on the way is an upper bound, so a search that
   * finds too little rise ends at once: a large sample that overlaps is settled by its first few
   * hundred rows.
   */
  private static final class Cuts {
    private static final int AT_FIRST = 400;
    private static final int AT_A_TIME = 100;

    private final List<LinearConstraint> box;
    private final List<double[]> rows = new ArrayList<>();
    private final BitSet joined = new BitSet();

    Cuts(List<LinearConstraint> box) {
      this.box = box;
    }

    void add(double[] row) {
      rows.add(row);
    }

    double[] maximise(double[] objective, double enough) {
      // A sum over a million rows would drown the solver's idea of zero.
      double size = Math.sqrt(Vectors.dot(objective, objective));
      double[] scaled = Arrays.stream(objective).map(x -> size > 0 ? x / size : 0).toArray();
      List<LinearConstraint> constraints = new ArrayList<>(box);
      int stride = Math.max(1, rows.size() / AT_FIRST);
      for (int i = 0; i < rows.size(); i += stride) {
        join(i, constraints);
      }
      while (true) {
        double[] best = RecessionDirection.maximise(scaled, constraints);
        int[] broken = Vectors.dot(objective, best) > enough ? broken(best) : new int[0];
        if (broken.length == 0) {
          return best;
        }
        for (int row : broken) {
          join(row, constraints);
        }
      }
    }

    private void join(int row, List<LinearConstraint> constraints) {
      constraints.add(atLeastZero(rows.get(row)));
      joined.set(row);
    }

    /**
     * Rows that fall along a direction, the steepest first. A row that falls though it has joined
     * falls by the solver's rounding alone: to join again would change nothing, for ever.
     */
    private int[] broken(double[] direction) {
      return IntStream.range(0, rows.size())
          .filter(i -> !joined.get(i) && Vectors.dot(rows.get(i), direction) < -ZERO)
          .boxed()
          .sorted(Comparator.comparingDouble(i -> Vectors.dot(rows.get(i), direction)))
          .limit(AT_A_TIME)
          .mapToInt(Integer::intValue)
          .toArray();
    }
  }

  private static double[] maximise(double[] objective, List<LinearConstraint> constraints) {
    return new SimplexSolver(1e-10, 10, 1e-10)
        .optimize(
            new MaxIter(100_000),
            new LinearObjectiveFunction(objective, 0),
            new LinearConstraintSet(constraints),
            GoalType.MAXIMIZE,
            new NonNegativeConstraint(false),
            PivotSelectionRule.BLAND) // every row meets at zero, where other rules may cycle
        .getPoint();
  }

  /** Written as "at most", so that zero is a feasible start and the solver needs no first phase. */
  private static LinearConstraint atLeastZero(double[] row) {
    return new LinearConstraint(negated(row), Relationship.LEQ, 0);
  }

  private static double[] negated(double[] row) {
    double[] negated = new double[row.length];
    for (int j = 0; j < row.length; j++) {
      negated[j] = -row[j];
    }
    return negated;
  }

  private static List<LinearConstraint> box(int boxed, int width) {
    List<LinearConstraint> sides = new ArrayList<>();
    for (int j = 0; j < boxed; j++) {
      for (int sign = -1; sign <= 1; sign += 2) {
        double[] axis = new double[width];
        axis[j] = sign;
        sides.add(new LinearConstraint(axis, Relationship.LEQ, 1));
      }
    }
    return sides;
  }

  private static Map<Row, Integer> distinct(double[][] rows) {
    Map<Row, Integer> counts = new LinkedHashMap<>();
    for (double[] row : rows) {
      double length = Math.sqrt(Vectors.dot(row, row));
      if (length > 0) {
        double[] unit = row.clone();
        for (int j = 0; j < unit.length; j++) {
          unit[j] = unit[j] / length + 0.0; // + 0.0 turns -0.0 into 0.0
        }
        counts.merge(new Row(unit), 1, Integer::sum);
      }
    }
    return counts;
  }

  private record Row(double[] values) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Row row && Arrays.equals(values, row.values);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(values);
    }
  }
}
