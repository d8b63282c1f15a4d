package charline.stat.regression;

import charline.stat.linear.Vectors;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.RecessionDirection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Whether the outcomes can be told apart by a line through the covariates, in which case the
 * likelihood grows for ever along it (Albert and Anderson 1984, Biometrika 71:1-10).
 */
public enum Separation {
  /** Outcomes overlap: the maximum likelihood estimate exists. */
  NONE,
  /** Every row lies strictly on its own side of the line. */
  COMPLETE,
  /** No row lies on the wrong side, but some lie on the line itself. */
  QUASI_COMPLETE;

  /** What a search found: the kind, and a direction in which the likelihood never falls. */
  record Finding(Separation kind, double[] direction) {}

  /** Outcomes overlap. */
  static final Finding NOTHING = new Finding(NONE, new double[0]);

  /** What rounding and the tolerance of the linear programme may amount to, for one trial. */
  private static final double SLACK = 1e-6;

  /**
   * Whether a maximum under the logit link proves that outcomes overlap. Along a direction d that
   * separates, a row q of m trials adds |q·d| |y - m p| to the slope, and |y - m p| ≥ m p (1 - p)
   * where all m went the way that d says; rows that went both ways add nothing. So the slope along
   * d is at least d'Id over the longest row, with I the information, and where the gradient is
   * shorter than that for every d there is no such direction. What separates all rows would
   * separate some of them too, so some can prove it for all.
   */
  static boolean excludedBy(NewtonMaximizer.Maximum maximum, GroupedRows rows) {
    double longest = 0;
    double trials = 0;
    for (int i = 0; i < rows.q().length; i++) {
      longest = Math.max(longest, Vectors.dot(rows.q()[i], rows.q()[i]));
      trials += rows.trials()[i];
    }
    longest = Math.sqrt(longest);
    double slope = Math.sqrt(Vectors.dot(maximum.gradient(), maximum.gradient()));
    RealMatrix information = new Array2DRowRealMatrix(maximum.hessian()).scalarMultiply(-1);
    double least =
        DoubleStream.of(new EigenDecomposition(information).getRealEigenvalues())
            .min()
            .orElseThrow();
    return least > longest * (slope + SLACK * trials * longest);
  }

  /** Decides by linear programming, so no iteration has to be watched for growing numbers. */
  static Finding in(BinomialSample sample) {
    List<double[]> oneSided = new ArrayList<>();
    List<double[]> level = new ArrayList<>();
    double[][] q = sample.design().basis().q();
    for (int i = 0; i < q.length; i++) {
      if (sample.events(i) == sample.trials(i)) {
        oneSided.add(q[i]);
      } else if (sample.events(i) == 0) {
        oneSided.add(negated(q[i]));
      } else {
        level.add(q[i]);
      }
    }
    double[][] rows = oneSided.toArray(double[][]::new);
    Optional<double[]> direction =
        RecessionDirection.direction(rows, level.toArray(double[][]::new));
    if (direction.isEmpty()) {
      return NOTHING;
    }
    Separation kind =
        level.isEmpty() && RecessionDirection.allCanRise(rows) ? COMPLETE : QUASI_COMPLETE;
    return new Finding(kind, cleaned(sample.design().basis().outward(direction.get())));
  }

  private static double[] negated(double[] row) {
    double[] result = row.clone();
    for (int j = 0; j < result.length; j++) {
      result[j] = -result[j];
    }
    return result;
  }

  private static double[] cleaned(double[] direction) {
    double largest = 0;
    for (double value : direction) {
      largest = Math.max(largest, Math.abs(value));
    }
    for (int j = 0; j < direction.length; j++) {
      if (Math.abs(direction[j]) < 1e-9 * largest) {
        direction[j] = 0;
      }
    }
    return direction;
  }
}
