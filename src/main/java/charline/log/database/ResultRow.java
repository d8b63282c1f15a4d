package charline.log.database;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** The row of an answer that has been reached, read by column name. */
public final class ResultRow {
  /** Makes a value of a row. */
  @FunctionalInterface
  public interface Reader<T> {
    T read(ResultRow row) throws SQLException;
  }

  private final ResultSet set;

  /** Readings of one patch, and patches of one sheet, often have one time: it is made once. */
  private OffsetDateTime lastMoment;

  private String lastUtc;
  private String lastOffset;

  public ResultRow(ResultSet set) {
    this.set = set;
  }

  public String text(String column) throws SQLException {
    return set.getString(column);
  }

  public Optional<String> optionalText(String column) throws SQLException {
    return Optional.ofNullable(set.getString(column));
  }

  public int whole(String column) throws SQLException {
    long value = set.getLong(column);
    if (value != (int) value) {
      throw new IllegalArgumentException("%s of %d is too many".formatted(column, value));
    }
    return (int) value;
  }

  public double number(String column) throws SQLException {
    return set.getDouble(column);
  }

  public OptionalDouble optionalNumber(String column) throws SQLException {
    double value = set.getDouble(column);
    return set.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  public Optional<Boolean> optionalFlag(String column) throws SQLException {
    int value = set.getInt(column);
    return set.wasNull() ? Optional.empty() : Optional.of(value != 0);
  }

  public boolean has(String column) throws SQLException {
    return set.getObject(column) != null;
  }

  public byte[] bytes(String column) throws SQLException {
    return set.getBytes(column);
  }

  public UUID id(String column) throws SQLException {
    return UUID.fromString(set.getString(column));
  }

  /** The time in the columns {@code stem_utc} and {@code stem_offset}. */
  public OffsetDateTime moment(String stem) throws SQLException {
    String utc = set.getString(stem + "_utc");
    String offset = set.getString(stem + "_offset");
    if (!utc.equals(lastUtc) || !offset.equals(lastOffset)) {
      lastMoment = Timestamps.of(utc, offset);
      lastUtc = utc;
      lastOffset = offset;
    }
    return lastMoment;
  }
}
