package charline.cache;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The components of a record class. They are read by handles of their fields, for which Java has
 * all code ready: to an accessor or a field called by name it would compile a way of its own.
 *
 * @param parts in the order of the header
 * @param constructor the canonical one
 */
record Shape(List<Part> parts, Constructor<?> constructor) {
  private static final Map<Class<?>, Shape> KNOWN = new ConcurrentHashMap<>();

  /** A component. */
  record Part(Class<?> type, VarHandle field) {}

  static Shape of(Class<?> type) {
    return KNOWN.computeIfAbsent(type, Shape::look);
  }

  private static Shape look(Class<?> type) {
    try {
      MethodHandles.Lookup lookup = MethodHandles.privateLookupIn(type, MethodHandles.lookup());
      List<Part> parts = new ArrayList<>();
      for (Field field : type.getDeclaredFields()) { // a record's only instance fields
        if (!Modifier.isStatic(field.getModifiers())) {
          parts.add(new Part(field.getType(), lookup.unreflectVarHandle(field)));
        }
      }
      Constructor<?> constructor =
          type.getDeclaredConstructor(parts.stream().map(Part::type).toArray(Class<?>[]::new));
      constructor.setAccessible(true);
      return new Shape(parts, constructor);
    } catch (NoSuchMethodException | IllegalAccessException e) {
      throw new IllegalArgumentException(type + " is no record of this program.", e);
    }
  }
}
