package charline.stat.linear;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A design matrix with named columns: one row per observation, one column per coefficient.
 *
 * <p>A design can always be solved: its numbers are finite, it has at least as many rows as
 * columns, and no column is a combination of the others.
 */
public final class Design {
  /** The name of the column of ones. */
  public static final String INTERCEPT = "(Intercept)";

  private final List<String> names;
  private final double[][] rows;
  private final OrthogonalBasis basis;

  private Design(List<String> names, double[][] rows) {
    this.names = names;
    this.rows = rows;
    this.basis = OrthogonalBasis.of(names, rows);
  }

  /**
   * A design from its rows.
   *
   * @param names one per column, all different
   * @param rows one per observation, each as long as {@code names}
   * @throws IllegalArgumentException if a number is not finite, the shape does not fit, there are
   *     fewer rows than columns, or a column is a combination of those before it
   */
  public static Design of(List<String> names, double[][] rows) {
    List<String> fixed = List.copyOf(names);
    if (fixed.isEmpty()) {
      throw new IllegalArgumentException("A design must have at least one column, not none.");
    }
    if (Set.copyOf(fixed).size() < fixed.size()) {
      throw new IllegalArgumentException("Column names must differ, not " + fixed + ".");
    }
    double[][] copy = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      copy[i] = rows[i].clone();
      requireRow(fixed, copy[i], i);
    }
    if (copy.length < fixed.size()) {
      throw new IllegalArgumentException(
          "There must be at least as many rows as coefficients: %d coefficients %s, but %d %s."
              .formatted(fixed.size(), fixed, copy.length, copy.length == 1 ? "row" : "rows"));
    }
    return new Design(fixed, copy);
  }

  /**
   * A design with a column of ones first.
   *
   * @param names one per covariate
   * @param columns the covariates, whole columns of one length
   * @throws IllegalArgumentException as for {@link #of}
   */
  public static Design withIntercept(List<String> names, double[]... columns) {
    if (names.size() != columns.length) {
      throw new IllegalArgumentException(
          "There must be one name per column: %d columns, but %d names %s."
              .formatted(columns.length, names.size(), names));
    }
    if (columns.length == 0) {
      throw new IllegalArgumentException(
          "A design with covariates needs at least one; use interceptOnly(rows) for none.");
    }
    for (int j = 1; j < columns.length; j++) {
      if (columns[j].length != columns[0].length) {
        throw new IllegalArgumentException(
            "Columns must have one length: '%s' has %d values, but '%s' has %d."
                .formatted(names.get(0), columns[0].length, names.get(j), columns[j].length));
      }
    }
    double[][] rows = new double[columns[0].length][columns.length + 1];
    for (int i = 0; i < rows.length; i++) {
      rows[i][0] = 1;
      for (int j = 0; j < columns.length; j++) {
        rows[i][j + 1] = columns[j][i];
      }
    }
    List<String> all = new ArrayList<>(List.of(INTERCEPT));
    all.addAll(names);
    return of(all, rows);
  }

  /** A design of nothing but ones. */
  public static Design interceptOnly(int rows) {
    return of(
        List.of(INTERCEPT),
        IntStream.range(0, rows).mapToObj(i -> new double[] {1}).toArray(double[][]::new));
  }

  private static void requireRow(List<String> names, double[] row, int index) {
    if (row.length != names.size()) {
      throw new IllegalArgumentException(
          "Row %d must have %d values, one per column, not %d."
              .formatted(index + 1, names.size(), row.length));
    }
    for (int j = 0; j < row.length; j++) {
      if (!Double.isFinite(row[j])) {
        throw new IllegalArgumentException(
            "Column '%s' must be a finite number in row %d, not %s; leave the row out."
                .formatted(names.get(j), index + 1, row[j]));
      }
    }
  }

  /** Column names, in the order of the coefficients. */
  public List<String> names() {
    return names;
  }

  public int rowCount() {
    return rows.length;
  }

  public int columnCount() {
    return names.size();
  }

  /** A copy of one row, counted from 0. */
  public double[] row(int index) {
    return rows[index].clone();
  }

  /** The linear predictor of one row. */
  public double predictor(int index, double[] coefficients) {
    return Vectors.dot(rows[index], coefficients);
  }

  /**
   * Where a column stands, counted from 0.
   *
   * @throws IllegalArgumentException "No column 'PO'; this design has [(Intercept), NV]."
   */
  public int indexOf(String name) {
    int index = names.indexOf(name);
    if (index < 0) {
      throw new IllegalArgumentException(
          "No column '" + name + "'; this design has " + names + ".");
    }
    return index;
  }

  /**
   * The design of chosen rows.
   *
   * @param indices rows to keep, counted from 0
   * @throws IllegalArgumentException as for {@link #of}
   */
  public Design rows(int... indices) {
    return of(names, IntStream.of(indices).mapToObj(i -> rows[i]).toArray(double[][]::new));
  }

  /** The same space in a well-scaled basis. */
  public OrthogonalBasis basis() {
    return basis;
  }
}
