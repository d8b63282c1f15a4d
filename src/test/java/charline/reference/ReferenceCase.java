package charline.reference;

import static java.util.Objects.requireNonNull;

import charline.stat.linear.Design;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** One folder of src/test/resources/reference: data, and what they must give. */
public final class ReferenceCase {
  private final String folder;
  private final Map<String, Object> root;

  private ReferenceCase(String folder, Map<String, Object> root) {
    this.folder = folder;
    this.root = root;
  }

  public static ReferenceCase load(String folder) {
    String path = "/reference/" + folder + "/case.json";
    try (InputStream in = ReferenceCase.class.getResourceAsStream(path)) {
      return new ReferenceCase(folder, JSON.std.mapFrom(requireNonNull(in, path)));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(path, unreadable);
    }
  }

  /** A part of the data, as numbers of its own: "narrow_series". */
  public Expected data(String key) {
    return node(folder, root.get("data")).at(key);
  }

  /** A column as it stands; null where missing. */
  public List<Object> column(String name) {
    Map<String, Object> columns = object(object(root.get("data")).get("columns"));
    return new ArrayList<>(list(requireNonNull(columns.get(name), name)));
  }

  public double[] numbers(String column) {
    return column(column).stream().mapToDouble(v -> ((Number) v).doubleValue()).toArray();
  }

  public int[] counts(String column) {
    return column(column).stream().mapToInt(v -> ((Number) v).intValue()).toArray();
  }

  public List<String> labels(String column) {
    return column(column).stream().map(String::valueOf).toList();
  }

  /** Rows, counted from 0, where a column has a value; all of them for "column" blank. */
  public int[] rowsWhere(String column, Object value) {
    List<Object> values = column(column);
    return IntStream.range(0, values.size())
        .filter(i -> String.valueOf(value).equals(String.valueOf(values.get(i))))
        .toArray();
  }

  /**
   * The design of some terms: the intercept, columns by name, and 0/1 contrasts named by column and
   * level, like "familyB".
   */
  public Design design(List<String> terms) {
    Map<String, Object> columns = object(object(root.get("data")).get("columns"));
    int rows = list(columns.values().iterator().next()).size();
    double[][] design = new double[rows][terms.size()];
    for (int j = 0; j < terms.size(); j++) {
      String term = terms.get(j);
      for (int i = 0; i < rows; i++) {
        design[i][j] = covariate(columns, term, i);
      }
    }
    return Design.of(terms, design);
  }

  private static double covariate(Map<String, Object> columns, String term, int row) {
    if (term.equals(Design.INTERCEPT)) {
      return 1;
    }
    if (columns.containsKey(term)) {
      return ((Number) list(columns.get(term)).get(row)).doubleValue();
    }
    String factor = columns.keySet().stream().filter(term::startsWith).findFirst().orElseThrow();
    return (factor + list(columns.get(factor)).get(row)).equals(term) ? 1 : 0;
  }

  /** A fit by its id. */
  public Expected fit(String id) {
    return list(root.get("fits")).stream()
        .filter(fit -> id.equals(object(fit).get("id")))
        .findFirst()
        .map(fit -> node(folder + "/" + id, fit))
        .orElseThrow(() -> new IllegalArgumentException("No fit " + id + " in " + folder + "."));
  }

  /** Ids of all fits. */
  public List<String> fitIds() {
    return list(root.get("fits")).stream().map(fit -> (String) object(fit).get("id")).toList();
  }

  /** The file's tolerance for a kind of number; a file with one tolerance has it for all. */
  public Tolerance tolerance(String kind) {
    Object tolerance = root.get("tolerance");
    return Tolerance.parse(
        tolerance instanceof String words ? words : (String) object(tolerance).get(kind));
  }

  static Expected node(String path, Object value) {
    return new Expected(path, object(value));
  }

  @SuppressWarnings("unchecked") // a JSON object has strings for keys
  private static Map<String, Object> object(Object value) {
    return (Map<String, Object>) value;
  }

  private static List<?> list(Object value) {
    return value instanceof List<?> list ? list : List.of(value);
  }
}
