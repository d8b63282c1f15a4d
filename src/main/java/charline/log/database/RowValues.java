package charline.log.database;

import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Map;

/** Values of a row to be written, by column. */
public final class RowValues {
  private final Map<String, Object> values = new LinkedHashMap<>();

  /** Puts a value, an identity, a flag, or an optional one of these. */
  public RowValues put(String column, Object value) {
    values.put(column, value);
    return this;
  }

  /** Puts a time into the columns {@code stem_utc} and {@code stem_offset}. */
  public RowValues moment(String stem, OffsetDateTime moment) {
    return put(stem + "_utc", Timestamps.utc(moment))
        .put(stem + "_offset", Timestamps.offset(moment));
  }

  Map<String, Object> byColumn() {
    return values;
  }
}
