package charline.cache;

import java.util.function.Function;

/**
 * How values of a class that is no record are kept: as a record of their parts.
 *
 * @param type the class
 * @param parts takes a value apart
 * @param whole puts it together again, equal in all that can be asked of it
 */
public record Form<T, P extends Record>(
    Class<T> type, Class<P> partsType, Function<T, P> parts, Function<P, T> whole) {
  Record apart(Object value) {
    return parts.apply(type.cast(value));
  }

  T together(Object read) {
    return whole.apply(partsType.cast(read));
  }
}
