package charline.stat.metaanalysis;

import charline.stat.distribution.StandardNormal;
import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * A mixture of normal distributions.
 *
 * @param parts one or more
 */
public record NormalMixture(List<Part> parts) {
  private static final int MOST_STEPS = 200;

  /**
   * One of the normals.
   *
   * @param weight above 0; weights need not add up to 1
   * @param mean its mean
   * @param sd its standard deviation, above 0
   */
  public record Part(double weight, double mean, double sd) {}

  public NormalMixture {
    parts = List.copyOf(parts);
  }

  /** Probability within {@code halfWidth} of a centre. */
  public double within(double centre, double halfWidth) {
    double total = 0;
    double inside = 0;
    for (Part part : parts) {
      double high = (centre + halfWidth - part.mean()) / part.sd();
      double low = (centre - halfWidth - part.mean()) / part.sd();
      total += part.weight();
      inside += part.weight() * StandardNormal.between(low, high);
    }
    return inside / total;
  }

  /**
   * How far about a centre this probability lies.
   *
   * @param probability inside (0, 1)
   * @param sd standard deviation about the centre, which says where to search (Chebyshev)
   */
  public double halfWidth(double centre, double probability, double sd) {
    double farthest = sd / Math.sqrt(1 - probability) * 1.001;
    return new BrentSolver(1e-9 * sd)
        .solve(MOST_STEPS, h -> within(centre, h) - probability, 0, farthest);
  }
}
