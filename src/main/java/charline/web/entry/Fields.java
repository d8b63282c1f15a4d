package charline.web.entry;

import charline.refusal.Refusal;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/** The named values of an entry as a device sent it. */
public final class Fields {
  private static final int LONGEST_LINE = 120;
  private static final int LONGEST_NOTE = 4000;

  private final Function<String, Object> values;

  private Fields(Function<String, Object> values) {
    this.values = values;
  }

  /** The values that a form or an address gives. */
  public static Fields of(UnaryOperator<String> value) {
    return new Fields(value::apply);
  }

  /** Reads a JSON object. */
  public static Fields parse(String json) {
    try {
      return new Fields(Objects.requireNonNull(JSON.std.mapFrom(json))::get);
    } catch (IOException | RuntimeException e) {
      throw Refusal.usage(
          "An entry must be a JSON object; this one could not be read. Reload the page.", e);
    }
  }

  /** A short text, or null if it was not given. */
  public String line(String name) {
    return text(name, LONGEST_LINE);
  }

  /** A longer text, if it was given. */
  Optional<String> note(String name) {
    return Optional.ofNullable(text(name, LONGEST_NOTE));
  }

  private String text(String name, int longest) {
    Object value = values.apply(name);
    if (value == null || value.toString().isBlank()) {
      return null;
    }
    if (!(value instanceof String || value instanceof Number || value instanceof Boolean)) {
      throw Refusal.usage("\"%s\" must be a text or a number.".formatted(name));
    }
    String text = value.toString().strip();
    if (text.length() > longest) {
      throw Refusal.usage(
          "\"%s\" must be at most %d characters long, not %d; shorten it."
              .formatted(name, longest, text.length()));
    }
    return text;
  }

  String need(String name, String words) {
    String text = line(name);
    if (text == null) {
      throw Refusal.usage(words + " is missing.");
    }
    return text;
  }

  /** An identity that a device made: a UUID of version 7. */
  public UUID id(String name) {
    String text = need(name, "The identity of the entry");
    try {
      UUID id = UUID.fromString(text);
      if (id.version() == 7 && id.toString().equalsIgnoreCase(text)) {
        return id;
      }
    } catch (IllegalArgumentException e) {
      // refused below, with the same words
    }
    throw Refusal.usage(
        "An entry's identity must be a UUID of version 7, not \"%s\".".formatted(text));
  }

  int count(String name, String words) {
    String text = need(name, words);
    if (!text.matches("[1-9]\\d{0,3}")) {
      throw Refusal.usage(
          "%s must be a whole number, 1 or more, not \"%s\".".formatted(words, text));
    }
    return Integer.parseInt(text);
  }

  boolean yes(String name) {
    return "true".equals(line(name));
  }

  Optional<Boolean> yesOrNo(String name) {
    return Optional.ofNullable(line(name)).map("yes"::equals);
  }
}
