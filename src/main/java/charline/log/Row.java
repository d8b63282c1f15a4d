package charline.log;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** One row of an answer, read by column name. */
final class Row {
  /** Makes a value of a row. */
  @FunctionalInterface
  interface Reader<T> {
    T read(Row row) throws SQLException;
  }

  private final ResultSet set;

  Row(ResultSet set) {
    this.set = set;
  }

  String text(String column) throws SQLException {
    return set.getString(column);
  }

  Optional<String> optionalText(String column) throws SQLException {
    return Optional.ofNullable(set.getString(column));
  }

  int whole(String column) throws SQLException {
    long value = set.getLong(column);
    if (value != (int) value) {
      throw new IllegalArgumentException("%s of %d is too many".formatted(column, value));
    }
    return (int) value;
  }

  double number(String column) throws SQLException {
    return set.getDouble(column);
  }

  OptionalDouble optionalNumber(String column) throws SQLException {
    double value = set.getDouble(column);
    return set.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  Optional<Boolean> optionalFlag(String column) throws SQLException {
    int value = set.getInt(column);
    return set.wasNull() ? Optional.empty() : Optional.of(value != 0);
  }

  boolean has(String column) throws SQLException {
    return set.getObject(column) != null;
  }

  byte[] bytes(String column) throws SQLException {
    return set.getBytes(column);
  }

  UUID id(String column) throws SQLException {
    return UUID.fromString(set.getString(column));
  }

  /** The time in the columns {@code stem_utc} and {@code stem_offset}. */
  OffsetDateTime moment(String stem) throws SQLException {
    return Moments.of(set.getString(stem + "_utc"), set.getString(stem + "_offset"));
  }
}
