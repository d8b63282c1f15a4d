package charline.log.database;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** Values of a row to be written, each of a column of its own. */
public final class RowValues {
  private final List<String> columns = new ArrayList<>();
  private final List<Object> values = new ArrayList<>();

  /** Puts a value, an identity, a flag, or an optional one of these. */
  public RowValues put(String column, Object value) {
    columns.add(column);
    values.add(plain(value));
    return this;
  }

  /** Puts a time into the columns {@code stem_utc} and {@code stem_offset}. */
  public RowValues moment(String stem, OffsetDateTime moment) {
    return put(stem + "_utc", Timestamps.utc(moment))
        .put(stem + "_offset", Timestamps.offset(moment));
  }

  /** A value as the driver takes it; null for none. */
  static Object plain(Object value) {
    if (value instanceof Optional<?> optional) {
      return plain(optional.orElse(null));
    }
    if (value instanceof OptionalDouble optional) {
      return optional.isPresent() ? optional.getAsDouble() : null;
    }
    if (value instanceof Boolean flag) {
      return flag ? 1 : 0;
    }
    return value instanceof UUID id ? id.toString() : value;
  }

  List<String> columns() {
    return columns;
  }

  List<Object> values() {
    return values;
  }
}
