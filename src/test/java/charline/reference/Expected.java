package charline.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Expected numbers of a reference case. Every comparison is written down, so that {@link
 * #nothingIsLeft} can tell a number that nobody looked at.
 */
public final class Expected {
  private final String path;
  private final Map<String, Object> values;
  private final Set<String> used = new HashSet<>();

  Expected(String path, Map<String, Object> values) {
    this.path = path;
    this.values = values;
  }

  /** Folder, fit and keys down to here. */
  public String path() {
    return path;
  }

  public boolean has(String key) {
    return values.get(key) != null;
  }

  public String text(String key) {
    return (String) value(key);
  }

  public double number(String key) {
    return ((Number) value(key)).doubleValue();
  }

  public boolean flag(String key) {
    return (Boolean) value(key);
  }

  public double[] numbers(String key) {
    return items(key).stream().mapToDouble(item -> ((Number) item).doubleValue()).toArray();
  }

  public List<String> texts(String key) {
    return items(key).stream().map(String.class::cast).toList();
  }

  /** A nested object. */
  public Expected at(String key) {
    return ReferenceCase.node(path + "." + key, value(key));
  }

  /** A list of nested objects; a bare object stands for a list of one. */
  public List<Expected> each(String key) {
    List<Expected> result = new ArrayList<>();
    for (Object item : items(key)) {
      result.add(ReferenceCase.node(path + "." + key + "[" + result.size() + "]", item));
    }
    return result;
  }

  /** Asserts one number. */
  public void check(String key, double actual, Tolerance tolerance) {
    compare(path + "." + key, number(key), actual, tolerance);
  }

  /** Asserts a list of numbers; a bare number stands for a list of one. */
  public void check(String key, double[] actual, Tolerance tolerance) {
    double[] expected = numbers(key);
    assertThat(actual).as(path + "." + key).hasSameSizeAs(expected);
    for (int i = 0; i < expected.length; i++) {
      compare(path + "." + key + "[" + i + "]", expected[i], actual[i], tolerance);
    }
  }

  /** Asserts a square of numbers. */
  public void check(String key, double[][] actual, Tolerance tolerance) {
    List<?> rows = items(key);
    for (int i = 0; i < actual.length; i++) {
      List<?> row = rows.get(i) instanceof List<?> list ? list : List.of(rows.get(i));
      for (int j = 0; j < actual[i].length; j++) {
        compare(
            path + "." + key + "[" + i + "][" + j + "]",
            ((Number) row.get(j)).doubleValue(),
            actual[i][j],
            tolerance);
      }
    }
  }

  /** Leaves values unchecked, with the reason on record. */
  public void skip(String reason, String... keys) {
    assertThat(reason).as("reason for skipping " + List.of(keys)).isNotBlank();
    used.addAll(List.of(keys));
  }

  /** Fails if something was expected that no check has looked at. */
  public void nothingIsLeft() {
    assertThat(values.keySet().stream().filter(key -> !used.contains(key)))
        .as("expected but never checked in " + path)
        .isEmpty();
  }

  private static void compare(String what, double expected, double actual, Tolerance tolerance) {
    assertThat(tolerance.accepts(expected, actual))
        .as("%s: expected %s within %s, but was %s", what, expected, tolerance, actual)
        .isTrue();
  }

  private List<?> items(String key) {
    Object value = value(key);
    return value instanceof List<?> list ? list : List.of(value);
  }

  private Object value(String key) {
    used.add(key);
    assertThat(values.get(key)).as(path + "." + key).isNotNull();
    return values.get(key);
  }
}
