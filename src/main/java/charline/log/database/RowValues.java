package charline.log.database;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** Values of a row to be written, each of a column of its own. */
public final class RowValues {
  private final List<String> columns = new ArrayList<>();
  private final List<Object> values = new ArrayList<>();

  /** Puts a value, an identity, a flag, or an optional one of these. */
  public RowValues put(String column, Object value) {
    columns.add(column);
    values.add(value);
    return this;
  }

  /** Puts a time into the columns {@code stem_utc} and {@code stem_offset}. */
  public RowValues moment(String stem, OffsetDateTime moment) {
    return put(stem + "_utc", Timestamps.utc(moment))
        .put(stem + "_offset", Timestamps.offset(moment));
  }

  List<String> columns() {
    return columns;
  }

  List<Object> values() {
    return values;
  }
}
