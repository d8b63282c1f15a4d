package charline.cache;

import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedSet;
import java.util.UUID;

/**
 * Writes values to the bit: records with what they are made of. {@link ValueReader} reads them.
 *
 * <p>Unequal values never give the same bytes, but for ids that only stand for each other.
 */
final class ValueWriter {
  private final DataOutputStream to;
  private final Seen seen;
  private final Map<Class<?>, Form<?, ?>> forms;

  /**
   * True where the bytes are only compared, and must be the same in every run: maps and sets are
   * put in order, and ids are numbered.
   */
  private final boolean ordered;

  ValueWriter(OutputStream to, Seen seen, Map<Class<?>, Form<?, ?>> forms, boolean ordered) {
    this.to = new DataOutputStream(to);
    this.seen = seen;
    this.forms = forms;
    this.ordered = ordered;
  }

  /**
   * @throws IllegalArgumentException if a value is none that can be kept
   */
  void write(Object value) throws IOException {
    if (value instanceof Record record) {
      writeOnce(record, null);
    } else if (value instanceof String text) {
      writeString(text);
    } else if (value instanceof Double number) {
      to.writeByte(Tag.DOUBLE);
      to.writeDouble(number);
    } else if (value instanceof Enum<?> word) {
      to.writeByte(Tag.ENUM);
      writeClass(word.getDeclaringClass());
      to.writeInt(word.ordinal());
    } else if (value instanceof Optional<?> optional) {
      to.writeByte(optional.isPresent() ? Tag.PRESENT : Tag.EMPTY);
      if (optional.isPresent()) {
        write(optional.get());
      }
    } else if (value instanceof OptionalDouble optional) {
      to.writeByte(optional.isPresent() ? Tag.SOME_DOUBLE : Tag.NO_DOUBLE);
      if (optional.isPresent()) {
        to.writeDouble(optional.getAsDouble());
      }
    } else if (value instanceof OptionalInt optional) {
      to.writeByte(optional.isPresent() ? Tag.SOME_INT : Tag.NO_INT);
      if (optional.isPresent()) {
        to.writeInt(optional.getAsInt());
      }
    } else if (value instanceof Integer number) {
      to.writeByte(Tag.INTEGER);
      to.writeInt(number);
    } else if (value instanceof Long number) {
      to.writeByte(Tag.LONG);
      to.writeLong(number);
    } else if (value instanceof Boolean yes) {
      to.writeByte(yes ? Tag.TRUE : Tag.FALSE);
    } else if (value instanceof Collection<?> many) {
      writeMany(many);
    } else if (value instanceof Map<?, ?> map) {
      writeMap(map);
    } else if (value instanceof double[] numbers) {
      writeDoubles(numbers);
    } else if (value instanceof boolean[] answers) {
      to.writeByte(Tag.BOOLEANS);
      to.writeInt(answers.length);
      for (boolean answer : answers) {
        to.writeBoolean(answer);
      }
    } else if (value instanceof Object[] array) {
      to.writeByte(Tag.ARRAY);
      to.writeInt(array.length);
      writeClass(array.getClass().getComponentType());
      for (Object each : array) {
        write(each);
      }
    } else {
      writeRare(value);
    }
  }

  private void writeRare(Object value) throws IOException {
    if (value instanceof UUID id) {
      writeId(id);
    } else if (value instanceof OffsetDateTime time) {
      to.writeByte(Tag.TIME);
      to.writeLong(time.toEpochSecond());
      to.writeInt(time.getNano());
      to.writeInt(time.getOffset().getTotalSeconds());
    } else if (value instanceof LocalDate date) {
      to.writeByte(Tag.DATE);
      to.writeLong(date.toEpochDay());
    } else if (value instanceof Instant instant) {
      to.writeByte(Tag.INSTANT);
      to.writeLong(instant.getEpochSecond());
      to.writeInt(instant.getNano());
    } else if (value instanceof Path path) {
      to.writeByte(Tag.PATH);
      writeString(path.toString());
    } else if (value != null && forms.containsKey(value.getClass())) {
      writeOnce(value, forms.get(value.getClass()));
    } else {
      throw new IllegalArgumentException(
          "Values of %s cannot be kept.".formatted(value == null ? "null" : value.getClass()));
    }
  }

  private void writeOnce(Object value, Form<?, ?> form) throws IOException {
    Optional<Integer> number = seen.records().number(value);
    if (number.isPresent()) {
      to.writeByte(Tag.KNOWN_RECORD);
      to.writeInt(number.get());
      return;
    }
    to.writeByte(form == null ? Tag.RECORD : Tag.FORM);
    writeClass(value.getClass());
    if (form == null) {
      for (Shape.Part part : Shape.of(value.getClass()).parts()) {
        writePart(part, value);
      }
    } else {
      write(form.apart(value));
    }
    seen.records().add(value);
  }

  private void writePart(Shape.Part part, Object of) throws IOException {
    Class<?> type = part.type();
    if (type == double.class) {
      to.writeDouble((double) part.field().get(of));
    } else if (type == int.class) {
      to.writeInt((int) part.field().get(of));
    } else if (type == boolean.class) {
      to.writeBoolean((boolean) part.field().get(of));
    } else if (type == long.class) {
      to.writeLong((long) part.field().get(of));
    } else {
      write((Object) part.field().get(of));
    }
  }

  private void writeClass(Class<?> type) throws IOException {
    Optional<Integer> number = seen.classes().number(type);
    if (number.isPresent()) {
      to.writeInt(number.get());
      return;
    }
    to.writeInt(-1);
    to.writeUTF(type.getName());
    seen.classes().add(type);
  }

  private void writeString(String text) throws IOException {
    Optional<Integer> number = seen.strings().number(text);
    if (number.isPresent()) {
      to.writeByte(Tag.KNOWN_STRING);
      to.writeInt(number.get());
      return;
    }
    int end = ordered ? -1 : knownEnd(text);
    if (end < 0) {
      to.writeByte(Tag.STRING);
      writeText(text);
    } else {
      to.writeByte(Tag.ENDS_KNOWN);
      writeText(text.substring(0, end));
      to.writeInt(seen.strings().number(text.substring(end)).orElseThrow());
    }
    seen.strings().add(text);
  }

  /** Where a name begins that a text ends with, as "board X"; -1 if there is none. */
  private int knownEnd(String text) {
    for (int k = text.indexOf(' ') + 1; k > 0; k = text.indexOf(' ', k) + 1) {
      if (seen.strings().number(text.substring(k)).isPresent()) {
        return k;
      }
    }
    return -1;
  }

  private void writeText(String text) throws IOException {
    to.writeInt(text.length());
    to.writeChars(text);
  }

  /**
   * Ids say which things are one and no more, so that the order of their coming is all there is.
   */
  private void writeId(UUID id) throws IOException {
    Optional<Integer> number = seen.ids().number(id);
    if (number.isPresent()) {
      to.writeByte(Tag.KNOWN_UUID);
      to.writeInt(number.get());
      return;
    }
    to.writeByte(Tag.UUID);
    if (!ordered) {
      to.writeLong(id.getMostSignificantBits());
      to.writeLong(id.getLeastSignificantBits());
    }
    seen.ids().add(id);
  }

  private void writeMany(Collection<?> many) throws IOException {
    to.writeByte(
        many instanceof List ? Tag.LIST : many instanceof SortedSet ? Tag.SORTED : Tag.SET);
    to.writeInt(many.size());
    for (Object each : many instanceof Set ? inOrder(many) : many) {
      write(each);
    }
  }

  private void writeMap(Map<?, ?> map) throws IOException {
    to.writeByte(Tag.MAP);
    to.writeInt(map.size());
    for (Object key : inOrder(map.keySet())) {
      write(key);
      write(map.get(key));
    }
  }

  private Iterable<?> inOrder(Collection<?> many) {
    if (!ordered || many.size() < 2) {
      return many;
    }
    List<Object> sorted = new ArrayList<>(many);
    sorted.sort(null); // as they compare with each other
    return sorted;
  }

  private void writeDoubles(double[] numbers) throws IOException {
    to.writeByte(Tag.DOUBLES);
    to.writeInt(numbers.length);
    ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES * numbers.length);
    bytes.asDoubleBuffer().put(numbers);
    to.write(bytes.array());
  }
}
