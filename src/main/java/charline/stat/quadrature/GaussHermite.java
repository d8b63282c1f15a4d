package charline.stat.quadrature;

import org.apache.commons.math3.analysis.integration.gauss.HermiteRuleFactory;
import org.apache.commons.math3.util.Pair;

/**
 * Gauss-Hermite rule for the mean of a function of a standard normal variable: E g(X) = Σ w g(x).
 * Exact for polynomials of degree 2n - 1. Nodes and weights from Commons Math, rescaled from the
 * weight e^-x² to the standard normal density.
 */
public final class GaussHermite {
  private final double[] nodes;
  private final double[] weights;

  /**
   * @param points number of nodes, 1 or more
   */
  public GaussHermite(int points) {
    Pair<double[], double[]> rule = new HermiteRuleFactory().getRule(points);
    nodes = rule.getFirst().clone();
    weights = rule.getSecond().clone();
    for (int q = 0; q < points; q++) {
      nodes[q] *= Math.sqrt(2);
      weights[q] /= Math.sqrt(Math.PI);
    }
  }

  public int points() {
    return nodes.length;
  }

  public double node(int q) {
    return nodes[q];
  }

  /** Weight of a node; the weights add up to 1. */
  public double weight(int q) {
    return weights[q];
  }
}
