package charline.stat.regression;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A sample on the orthogonal basis with equal rows joined, which changes no likelihood and saves
 * most of the work where covariates take few values.
 *
 * @param q distinct rows
 * @param events per row
 * @param trials per row
 */
record Counts(double[][] q, double[] events, double[] trials) {

  static Counts of(BinomialSample sample) {
    double[][] all = sample.design().basis().q();
    Map<Row, double[]> joined = new LinkedHashMap<>();
    for (int i = 0; i < all.length; i++) {
      double[] sums =
          joined.computeIfAbsent(new Row(sample.design().row(i), all[i]), row -> new double[2]);
      sums[0] += sample.events(i);
      sums[1] += sample.trials(i);
    }
    return new Counts(
        joined.keySet().stream().map(Row::q).toArray(double[][]::new),
        joined.values().stream().mapToDouble(sums -> sums[0]).toArray(),
        joined.values().stream().mapToDouble(sums -> sums[1]).toArray());
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
