package charline.cache;

import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Reads what {@link ValueWriter} wrote, with the same values seen before. Makes records and enums
 * of this program, and values of forms; nothing else. Whatever is wrong ends in a {@link
 * RuntimeException}.
 */
final class ValueReader {
  private static final String OWN = "charline.";

  private final ByteBuffer from;
  private final Seen seen;
  private final Map<Class<?>, Form<?, ?>> forms;

  ValueReader(ByteBuffer from, Seen seen, Map<Class<?>, Form<?, ?>> forms) {
    this.from = from;
    this.seen = seen;
    this.forms = forms;
  }

  Object read() {
    byte tag = from.get();
    return switch (tag) {
      case Tag.RECORD -> readRecord();
      case Tag.KNOWN_RECORD -> seen.records().at(from.getInt());
      case Tag.FORM -> readForm();
      case Tag.ENUM -> readClass().getEnumConstants()[from.getInt()];
      case Tag.STRING -> seenString(readText());
      case Tag.KNOWN_STRING -> seen.strings().at(from.getInt());
      case Tag.ENDS_KNOWN -> seenString(readText() + seen.strings().at(from.getInt()));
      case Tag.DOUBLE -> from.getDouble();
      case Tag.INTEGER -> from.getInt();
      case Tag.LONG -> from.getLong();
      case Tag.FALSE -> false;
      case Tag.TRUE -> true;
      case Tag.EMPTY -> Optional.empty();
      case Tag.PRESENT -> Optional.of(read());
      case Tag.NO_DOUBLE -> OptionalDouble.empty();
      case Tag.SOME_DOUBLE -> OptionalDouble.of(from.getDouble());
      case Tag.NO_INT -> OptionalInt.empty();
      case Tag.SOME_INT -> OptionalInt.of(from.getInt());
      case Tag.LIST -> List.of(readMany());
      case Tag.SET -> Collections.unmodifiableSet(new LinkedHashSet<>(Arrays.asList(readMany())));
      case Tag.SORTED -> new TreeSet<>(Arrays.asList(readMany()));
      case Tag.MAP -> readMap();
      case Tag.DOUBLES -> readDoubles();
      case Tag.BOOLEANS -> readBooleans();
      case Tag.ARRAY -> readArray();
      case Tag.UUID -> readId();
      case Tag.KNOWN_UUID -> seen.ids().at(from.getInt());
      case Tag.TIME -> readTime();
      case Tag.DATE -> LocalDate.ofEpochDay(from.getLong());
      case Tag.INSTANT -> Instant.ofEpochSecond(from.getLong(), from.getInt());
      case Tag.PATH -> Path.of((String) read());
      default -> throw new IllegalArgumentException("No value begins with " + tag + ".");
    };
  }

  private Object readRecord() {
    Class<?> type = readClass();
    if (!type.isRecord()) {
      throw new IllegalArgumentException(type + " is no record.");
    }
    Shape shape = Shape.of(type);
    Object[] parts = new Object[shape.parts().size()];
    for (int k = 0; k < parts.length; k++) {
      parts[k] = readPart(shape.parts().get(k).type());
    }
    Object made = made(shape.constructor(), parts);
    seen.records().add(made);
    return made;
  }

  private Object readPart(Class<?> type) {
    if (type == double.class) {
      return from.getDouble();
    } else if (type == int.class) {
      return from.getInt();
    } else if (type == boolean.class) {
      return from.get() != 0;
    } else if (type == long.class) {
      return from.getLong();
    }
    return read();
  }

  private static Object made(Constructor<?> constructor, Object[] parts) {
    try {
      return constructor.newInstance(parts);
    } catch (InvocationTargetException | InstantiationException | IllegalAccessException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private Object readForm() {
    Form<?, ?> form = forms.get(readClass());
    if (form == null) {
      throw new IllegalArgumentException("There is no such form.");
    }
    Object made = form.together(read());
    seen.records().add(made);
    return made;
  }

  /** Looked up without running any code of it. */
  private Class<?> readClass() {
    int number = from.getInt();
    if (number >= 0) {
      return seen.classes().at(number);
    }
    byte[] name = new byte[from.getShort() & 0xFFFF];
    from.get(name);
    String text = new String(name, java.nio.charset.StandardCharsets.US_ASCII);
    Class<?> type;
    try {
      type =
          switch (text) {
            case "[D" -> double[].class;
            case "double" -> double.class;
            default -> {
              if (!text.startsWith(OWN)) {
                throw new IllegalArgumentException("Values of another program are not read.");
              }
              yield Class.forName(text, false, ValueReader.class.getClassLoader());
            }
          };
    } catch (ClassNotFoundException e) {
      throw new IllegalArgumentException(e);
    }
    seen.classes().add(type);
    return type;
  }

  private String seenString(String text) {
    seen.strings().add(text);
    return text;
  }

  private String readText() {
    int length = count(Character.BYTES);
    StringBuilder text = new StringBuilder(length);
    for (int k = 0; k < length; k++) {
      text.append(from.getChar());
    }
    return text.toString();
  }

  /** A count of things that take so many bytes each or more: never more than there is room for. */
  private int count(int bytesEach) {
    int count = from.getInt();
    if (count < 0 || (long) count * bytesEach > from.remaining()) {
      throw new IllegalArgumentException("More is announced than follows.");
    }
    return count;
  }

  private Object[] readMany() {
    Object[] many = new Object[count(1)];
    for (int k = 0; k < many.length; k++) {
      many[k] = read();
    }
    return many;
  }

  private Map<Object, Object> readMap() {
    int size = count(2);
    Map<Object, Object> map = new LinkedHashMap<>();
    for (int k = 0; k < size; k++) {
      Object key = read();
      map.put(key, read());
    }
    return Collections.unmodifiableMap(map);
  }

  private double[] readDoubles() {
    double[] numbers = new double[count(Double.BYTES)];
    from.asDoubleBuffer().get(numbers);
    from.position(from.position() + Double.BYTES * numbers.length);
    return numbers;
  }

  private boolean[] readBooleans() {
    boolean[] answers = new boolean[count(1)];
    for (int k = 0; k < answers.length; k++) {
      answers[k] = from.get() != 0;
    }
    return answers;
  }

  private Object readArray() {
    int length = count(1);
    Object array = Array.newInstance(readClass(), length);
    for (int k = 0; k < length; k++) {
      Array.set(array, k, read());
    }
    return array;
  }

  private UUID readId() {
    UUID id = new UUID(from.getLong(), from.getLong());
    seen.ids().add(id);
    return id;
  }

  private OffsetDateTime readTime() {
    Instant instant = Instant.ofEpochSecond(from.getLong(), from.getInt());
    return OffsetDateTime.ofInstant(instant, ZoneOffset.ofTotalSeconds(from.getInt()));
  }
}
