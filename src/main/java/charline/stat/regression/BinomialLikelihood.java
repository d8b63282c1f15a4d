package charline.stat.regression;

import charline.stat.linear.Design;
import charline.stat.optimisation.TwiceDifferentiableFunction;

/** The log-likelihood of a binomial sample on the orthogonal basis, constants left out. */
final class BinomialLikelihood implements TwiceDifferentiableFunction {
  private final GroupedRows counts;
  private final Link link;
  private final double[][] q;

  BinomialLikelihood(BinomialSample sample, Link link) {
    this(GroupedRows.of(sample), link);
  }

  BinomialLikelihood(GroupedRows counts, Link link) {
    this.counts = counts;
    this.link = link;
    this.q = counts.q();
  }

  @Override
  public int dimension() {
    return q[0].length;
  }

  @Override
  public double value(double[] point) {
    double sum = 0;
    for (int i = 0; i < q.length; i++) {
      double eta = Design.dot(q[i], point);
      double events = counts.events()[i];
      double others = counts.trials()[i] - events;
      sum += events == 0 ? 0 : events * link.logRisk(eta);
      sum += others == 0 ? 0 : others * link.logComplement(eta);
    }
    return sum;
  }

  @Override
  public Local local(double[] point) {
    int width = dimension();
    double[] gradient = new double[width];
    double[][] hessian = new double[width][width];
    for (int i = 0; i < q.length; i++) {
      double eta = Design.dot(q[i], point);
      double events = counts.events()[i];
      double others = counts.trials()[i] - events;
      double slope = 0;
      double bend = 0;
      if (events > 0) { // what nobody saw must not enter, not even as 0 times infinity
        double[] up = link.slopesOfLogRisk(eta);
        slope += events * up[0];
        bend += events * up[1];
      }
      if (others > 0) {
        double[] down = link.slopesOfLogComplement(eta);
        slope += others * down[0];
        bend += others * down[1];
      }
      addOuter(gradient, hessian, q[i], slope, bend);
    }
    return new Local(value(point), gradient, hessian);
  }

  /** Expected information Q'WQ. */
  double[][] information(double[] point) {
    int width = dimension();
    double[][] information = new double[width][width];
    double[] unused = new double[width];
    for (int i = 0; i < q.length; i++) {
      double weight = counts.trials()[i] * link.information(Design.dot(q[i], point));
      addOuter(unused, information, q[i], 0, weight);
    }
    return information;
  }

  /** Adds slope times row, and bend times its square, which stays exactly symmetric. */
  static void addOuter(
      double[] gradient, double[][] hessian, double[] row, double slope, double bend) {
    for (int r = 0; r < row.length; r++) {
      gradient[r] += slope * row[r];
      for (int s = 0; s <= r; s++) {
        hessian[r][s] += bend * row[r] * row[s];
        hessian[s][r] = hessian[r][s];
      }
    }
  }
}
