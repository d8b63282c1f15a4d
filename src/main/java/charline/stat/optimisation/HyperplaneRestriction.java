package charline.stat.optimisation;

import charline.stat.linear.Vectors;
import java.util.Optional;

/**
 * A function restricted to the plane {@code a·x = c}, in coordinates of the plane.
 *
 * @param whole the unrestricted function, of dimension 2 or more
 * @param foot the point of the plane nearest to zero
 * @param axes orthonormal, one row per coordinate of the plane
 */
public record HyperplaneRestriction(
    TwiceDifferentiableFunction whole, double[] foot, double[][] axes)
    implements TwiceDifferentiableFunction {

  /** The plane where {@code normal·x = level}. */
  public static HyperplaneRestriction to(
      TwiceDifferentiableFunction whole, double[] normal, double level) {
    double squared = Vectors.dot(normal, normal);
    double[] foot = new double[normal.length];
    for (int j = 0; j < foot.length; j++) {
      foot[j] = normal[j] * level / squared;
    }
    return new HyperplaneRestriction(whole, foot, across(normal, Math.sqrt(squared)));
  }

  /** The rows of a Householder reflection of the normal onto the first axis, but the first. */
  private static double[][] across(double[] normal, double length) {
    int width = normal.length;
    double[] mirror = normal.clone();
    mirror[0] += normal[0] < 0 ? -length : length;
    double squared = Vectors.dot(mirror, mirror);
    double[][] axes = new double[width - 1][width];
    for (int r = 1; r < width; r++) {
      for (int j = 0; j < width; j++) {
        axes[r - 1][j] = (r == j ? 1 : 0) - 2 * mirror[r] * mirror[j] / squared;
      }
    }
    return axes;
  }

  /** A point of the plane in full coordinates. */
  public double[] whole(double[] point) {
    double[] full = foot.clone();
    for (int r = 0; r < axes.length; r++) {
      for (int j = 0; j < full.length; j++) {
        full[j] += point[r] * axes[r][j];
      }
    }
    return full;
  }

  /** The coordinates of the point of the plane nearest to a point. */
  public double[] nearest(double[] full) {
    double[] point = new double[axes.length];
    for (int r = 0; r < axes.length; r++) {
      point[r] = Vectors.dot(axes[r], full);
    }
    return point;
  }

  @Override
  public int dimension() {
    return axes.length;
  }

  @Override
  public double value(double[] point) {
    return whole.value(whole(point));
  }

  @Override
  public Local local(double[] point) {
    return within(whole.local(whole(point)));
  }

  @Override
  public Optional<Local> look(double[] point) {
    return whole.look(whole(point)).map(this::within);
  }

  private Local within(Local full) {
    double[] gradient = nearest(full.gradient());
    double[][] hessian = new double[axes.length][];
    for (int r = 0; r < axes.length; r++) {
      double[] product = new double[axes[r].length];
      for (int j = 0; j < product.length; j++) {
        product[j] = Vectors.dot(full.hessian()[j], axes[r]);
      }
      hessian[r] = nearest(product);
      for (int s = 0; s < r; s++) {
        hessian[s][r] = hessian[r][s];
      }
    }
    return new Local(full.value(), gradient, hessian);
  }
}
