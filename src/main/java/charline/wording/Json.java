package charline.wording;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One JSON object with its keys in the order they were put; a missing part is null. */
public final class Json {
  /** Enough for any quantity here, too few to show the noise of binary fractions. */
  private static final MathContext DIGITS = new MathContext(9);

  private final Map<String, Object> parts = new LinkedHashMap<>();

  /** Puts a number, a text, a truth, an object, a list, or an optional one of these. */
  public Json put(String key, Object value) {
    parts.put(key, shown(value));
    return this;
  }

  /** Puts an upper bound, rounded up where it has more than nine digits. */
  public Json atMost(String key, double bound) {
    return put(key, rounded(bound, RoundingMode.CEILING));
  }

  /** Puts a lower bound, rounded down where it has more than nine digits. */
  public Json atLeast(String key, double bound) {
    return put(key, rounded(bound, RoundingMode.FLOOR));
  }

  /** The same; null where there is none. */
  public Json atMost(String key, OptionalDouble bound) {
    return bound.isPresent() ? atMost(key, bound.getAsDouble()) : put(key, bound);
  }

  /** The same; null where there is none. */
  public Json atLeast(String key, OptionalDouble bound) {
    return bound.isPresent() ? atLeast(key, bound.getAsDouble()) : put(key, bound);
  }

  /** The ends of a range that must not be left, rounded inward. */
  public static List<Object> inward(double low, double high) {
    return List.of(rounded(low, RoundingMode.CEILING), rounded(high, RoundingMode.FLOOR));
  }

  private static Double rounded(double bound, RoundingMode mode) {
    return Double.isFinite(bound)
        ? BigDecimal.valueOf(bound)
            .round(new MathContext(DIGITS.getPrecision(), mode))
            .doubleValue()
        : bound;
  }

  /** Puts every part of a map. */
  public Json putAll(Map<String, ?> others) {
    others.forEach(this::put);
    return this;
  }

  /** The parts in their order: text, numbers, lists, maps and nulls only. */
  public Map<String, Object> parts() {
    return parts;
  }

  /** Indented text of an object. */
  public static String text(Json object) {
    return write(object.parts);
  }

  /** Indented text of an array. */
  public static String text(List<Json> objects) {
    return write(shown(objects));
  }

  private static Object shown(Object value) {
    if (value instanceof Optional<?> optional) {
      return optional.map(Json::shown).orElse(null);
    }
    if (value instanceof OptionalDouble optional) {
      return optional.isPresent() ? number(optional.getAsDouble()) : null;
    }
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Json object) {
      return object.parts;
    }
    if (value instanceof List<?> list) {
      List<Object> all = new ArrayList<>();
      list.forEach(each -> all.add(shown(each)));
      return all;
    }
    return value;
  }

  private static Object number(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return null;
    }
    if (value == Math.rint(value) && Math.abs(value) < 1e15) {
      return (long) value;
    }
    BigDecimal rounded = BigDecimal.valueOf(value).round(DIGITS).stripTrailingZeros();
    // A number that is whole but for noise would come out as 8E+1.
    return rounded.scale() <= 0 && Math.abs(value) < 1e15 ? rounded.longValueExact() : rounded;
  }

  private static String write(Object value) {
    try {
      return JSON.std
          .with(JSON.Feature.PRETTY_PRINT_OUTPUT, JSON.Feature.WRITE_NULL_PROPERTIES)
          .asString(value);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
