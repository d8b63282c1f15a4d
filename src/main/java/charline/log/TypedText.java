package charline.log;

import charline.trial.PlainText;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.AbstractMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a person typed, by knob. Out of a log it is read from its JSON when somebody asks for it,
 * which most that goes through many patches does not.
 */
final class TypedText extends AbstractMap<String, String> {
  private final String json;
  private volatile Map<String, String> read;

  private TypedText(String json) {
    this.json = json;
  }

  /**
   * As the log keeps it.
   *
   * @param json an object of text
   */
  static Map<String, String> ofJson(String json) {
    return json.equals("{}") ? Map.of() : new TypedText(json);
  }

  /** In plain text, and never to be changed. */
  static Map<String, String> plain(Map<String, String> typed) {
    if (typed instanceof TypedText) {
      return typed;
    }
    Map<String, String> plain = new HashMap<>(typed);
    plain.replaceAll((knob, text) -> PlainText.of(text));
    return Map.copyOf(plain);
  }

  /** As the log keeps it, with the knobs in order. */
  static String json(Map<String, String> typed) {
    try {
      return JSON.std.asString(new TreeMap<>(typed));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // text to text: nothing outside can fail
    }
  }

  private Map<String, String> read() {
    if (read == null) {
      try {
        Map<String, String> typed = new HashMap<>();
        JSON.std.mapFrom(json).forEach((knob, text) -> typed.put(knob, String.valueOf(text)));
        read = plain(typed);
      } catch (IOException e) {
        throw new UncheckedIOException(e); // the column is checked to hold a JSON object
      }
    }
    return read;
  }

  @Override
  public Set<Entry<String, String>> entrySet() {
    return read().entrySet();
  }

  @Override
  public String get(Object knob) {
    return read().get(knob);
  }
}
