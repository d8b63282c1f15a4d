package charline.log;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/** Typed text by knob, as JSON with the knobs in order. */
final class TypedJson {
  private TypedJson() {}

  static String json(Map<String, String> typed) {
    try {
      return JSON.std.asString(new TreeMap<>(typed));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // text to text: nothing outside can fail
    }
  }

  static Map<String, String> of(String json) {
    if (json.equals("{}")) {
      return Map.of();
    }
    try {
      Map<String, String> typed = new LinkedHashMap<>();
      JSON.std.mapFrom(json).forEach((knob, text) -> typed.put(knob, String.valueOf(text)));
      return typed;
    } catch (IOException e) {
      throw new UncheckedIOException(e); // the column is checked to hold a JSON object
    }
  }
}
