package charline.wording;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Comma-separated values (RFC 4180) of a list of flat objects. */
public final class Csv {
  private Csv() {}

  /** A head line from the keys of the first object, then a line each; empty for an empty list. */
  public static String text(List<Json> objects) {
    if (objects.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder();
    text.append(String.join(",", objects.get(0).parts().keySet())).append('\n');
    for (Json object : objects) {
      text.append(line(object.parts())).append('\n');
    }
    return text.toString();
  }

  private static String line(Map<String, Object> parts) {
    return parts.values().stream()
        .map(value -> value == null ? "" : cell(value))
        .collect(Collectors.joining(","));
  }

  private static String cell(Object value) {
    String text =
        value instanceof java.math.BigDecimal number ? number.toPlainString() : value.toString();
    return text.matches("(?s).*[\",\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }
}
