package charline.cache;

import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The components of a record class. They are read as fields: an accessor called by name would be
 * compiled by Java after a few calls, which takes longer than a second answer may.
 *
 * @param fields in the order of the header
 * @param constructor the canonical one
 */
record Shape(List<Field> fields, Constructor<?> constructor) {
  private static final Map<Class<?>, Shape> KNOWN = new ConcurrentHashMap<>();

  static Shape of(Class<?> type) {
    return KNOWN.computeIfAbsent(type, Shape::look);
  }

  private static Shape look(Class<?> type) {
    List<Field> fields = new ArrayList<>();
    for (Field field : type.getDeclaredFields()) { // a record's only instance fields
      if (!Modifier.isStatic(field.getModifiers())) {
        field.setAccessible(true);
        fields.add(field);
      }
    }
    try {
      Constructor<?> constructor =
          type.getDeclaredConstructor(fields.stream().map(Field::getType).toArray(Class<?>[]::new));
      constructor.setAccessible(true);
      return new Shape(fields, constructor);
    } catch (NoSuchMethodException e) {
      throw new IllegalArgumentException(type + " is no record.", e);
    }
  }
}
