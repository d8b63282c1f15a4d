package charline.stat.regression;

import charline.stat.Recession;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
    Optional<double[]> direction = Recession.direction(rows, level.toArray(double[][]::new));
    if (direction.isEmpty()) {
      return new Finding(NONE, new double[q[0].length]);
    }
    Separation kind = level.isEmpty() && Recession.allCanRise(rows) ? COMPLETE : QUASI_COMPLETE;
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
