package charline.stat.regression;

import charline.stat.linear.Design;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * A sample on the orthogonal basis with equal rows joined, which changes no likelihood and saves
 * most of the work where covariates take few values.
 *
 * @param q rows, distinct where joining was worth its while
 * @param events per row
 * @param trials per row
 */
record GroupedRows(double[][] q, double[] events, double[] trials) {

  private static final int PROBED = 1000;

  /** Joins equal rows, unless no two of a thousand are equal: then there is little to join. */
  static GroupedRows of(BinomialSample sample) {
    return looksDistinct(sample.design()) ? apart(sample) : joined(sample);
  }

  private static boolean looksDistinct(Design design) {
    int stride = design.rowCount() / PROBED;
    if (stride < 2) {
      return false;
    }
    return IntStream.range(0, PROBED)
            .mapToObj(i -> new Row(design.row(i * stride), null))
            .distinct()
            .count()
        == PROBED;
  }

  private static GroupedRows apart(BinomialSample sample) {
    double[] events = new double[sample.rowCount()];
    double[] trials = new double[events.length];
    for (int i = 0; i < events.length; i++) {
      events[i] = sample.events(i);
      trials[i] = sample.trials(i);
    }
    return new GroupedRows(sample.design().basis().q(), events, trials);
  }

  private static GroupedRows joined(BinomialSample sample) {
    double[][] all = sample.design().basis().q();
    Map<Row, double[]> joined = new LinkedHashMap<>();
    for (int i = 0; i < all.length; i++) {
      double[] sums =
          joined.computeIfAbsent(new Row(sample.design().row(i), all[i]), row -> new double[2]);
      sums[0] += sample.events(i);
      sums[1] += sample.trials(i);
    }
    return new GroupedRows(
        joined.keySet().stream().map(Row::q).toArray(double[][]::new),
        joined.values().stream().mapToDouble(sums -> sums[0]).toArray(),
        joined.values().stream().mapToDouble(sums -> sums[1]).toArray());
  }

  /** Every so many of the rows. */
  GroupedRows thinned(int stride) {
    int[] kept = IntStream.range(0, q.length).filter(i -> i % stride == 0).toArray();
    return new GroupedRows(
        IntStream.of(kept).mapToObj(i -> q[i]).toArray(double[][]::new),
        IntStream.of(kept).mapToDouble(i -> events[i]).toArray(),
        IntStream.of(kept).mapToDouble(i -> trials[i]).toArray());
  }

  /** Rows are equal when their covariates are. */
  private record Row(double[] covariates, double[] q) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Row row && Arrays.equals(covariates, row.covariates);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(covariates);
    }
  }
}
