package charline.log.database;

import charline.refusal.Refusal;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * The open file: runs statements and transactions, and words every failure for a person. Several
 * threads may use it; they take turns, a whole transaction at a time.
 */
public final class Database implements AutoCloseable {
  /** Few different statements, each kept ready; far below the 32,766 values of one. */
  private static final int ROWS_AT_ONCE = 32;

  private final Path file;
  private final Connection connection;
  private final Map<String, PreparedStatement> prepared = new HashMap<>();
  private final Map<Insert, String> inserts = new ConcurrentHashMap<>();
  private final ReentrantLock turn = new ReentrantLock();
  private final Optional<Upgrade> upgrade;
  private final Path place;
  private final Runnable closed;
  private int depth;

  /** Writes in place of the thread whose turn it is, where that asked for it; else null. */
  private WritesBehind behind;

  public Database(Path file, Connection connection, Optional<Upgrade> upgrade) {
    this(file, connection, upgrade, file, () -> {});
  }

  /**
   * A log that is read from elsewhere.
   *
   * @param file the log as a person knows it
   * @param place the file that the connection is to
   * @param closed runs when the connection is closed
   */
  public Database(
      Path file, Connection connection, Optional<Upgrade> upgrade, Path place, Runnable closed) {
    this.file = file;
    this.connection = connection;
    this.upgrade = upgrade;
    this.place = place;
    this.closed = closed;
  }

  /** The file that is read: the log, or a copy of one that cannot be written to. */
  public Path place() {
    return place;
  }

  public Optional<Upgrade> upgrade() {
    return upgrade;
  }

  public Path file() {
    return file;
  }

  /** Rows of a query, in its order. */
  public <T> List<T> query(String sql, ResultRow.Reader<T> reader, Object... values) {
    turn.lock();
    try {
      settle();
      PreparedStatement statement = bound(sql, values);
      try (ResultSet set = statement.executeQuery()) {
        List<T> rows = new ArrayList<>();
        ResultRow row = new ResultRow(set);
        while (set.next()) {
          rows.add(reader.read(row));
        }
        return rows;
      }
    } catch (SQLException e) {
      throw failed(sql, e);
    } catch (Refusal e) {
      throw e.kind() == Refusal.Kind.DATA ? e : unreadable(e);
    } catch (IllegalArgumentException | DateTimeException | NoSuchElementException e) {
      throw unreadable(e);
    } finally {
      turn.unlock();
    }
  }

  /** The rules of the schema let nothing in that cannot be read back. */
  private Refusal unreadable(RuntimeException e) {
    return Refusal.data(
        SqlFailures.damage(file, "a row cannot be read: " + SqlFailures.oneLine(e.getMessage())),
        e);
  }

  /** The first row of a query, if there is one. */
  public <T> Optional<T> first(String sql, ResultRow.Reader<T> reader, Object... values) {
    return query(sql, reader, values).stream().findFirst();
  }

  /** 64 bits by chance, from a generator that SQLite starts with what the system collects. */
  public long randomBits() {
    return first("SELECT random() AS bits", row -> Long.parseLong(row.text("bits"))).orElseThrow();
  }

  /** Runs a statement that changes rows; gives how many it changed. */
  public int update(String sql, Object... values) {
    turn.lock();
    try {
      settle();
      return run(sql, values);
    } finally {
      turn.unlock();
    }
  }

  private int run(String sql, Object... values) {
    try {
      return bound(sql, values).executeUpdate();
    } catch (SQLException e) {
      throw failed(sql, e);
    }
  }

  /** Runs a statement of which nobody wants to know how many rows it changed. */
  private void change(String sql, Object... values) {
    turn.lock();
    try {
      if (behind == null) {
        run(sql, values);
      } else {
        behind.add(sql, values);
      }
    } finally {
      turn.unlock();
    }
  }

  private void settle() {
    if (behind != null) {
      behind.settle();
    }
  }

  /**
   * Runs work that adds very many rows, which are written by another thread while the work goes on.
   * Whatever asks the log in between waits for them. What goes wrong with a row is told later than
   * otherwise, so the work has to be part of a transaction that is then given up.
   */
  public <T> T writingBehind(Supplier<T> work) {
    turn.lock();
    try {
      return behind == null ? withWriter(work) : work.get();
    } finally {
      turn.unlock();
    }
  }

  private <T> T withWriter(Supplier<T> work) {
    try (WritesBehind writes = new WritesBehind(this::run)) {
      behind = writes;
      T result = work.get();
      writes.settle();
      return result;
    } finally {
      behind = null;
    }
  }

  /** Adds a row to a table. */
  public void insert(String table, RowValues row) {
    insert(table, List.of(row));
  }

  /** Adds rows to a table, all of the same columns; many of them in few statements. */
  public void insert(String table, List<RowValues> rows) {
    for (int from = 0; from < rows.size(); from += ROWS_AT_ONCE) {
      List<RowValues> some = rows.subList(from, Math.min(from + ROWS_AT_ONCE, rows.size()));
      change(
          inserts.computeIfAbsent(
              new Insert(table, List.copyOf(some.get(0).columns()), some.size()), Insert::sql),
          some.stream().flatMap(row -> row.values().stream()).toArray());
    }
  }

  private record Insert(String table, List<String> columns, int rows) {
    String sql() {
      String places = "(" + String.join(", ", Collections.nCopies(columns.size(), "?")) + ")";
      return "INSERT INTO %s (%s) VALUES %s"
          .formatted(
              table,
              String.join(", ", columns),
              String.join(", ", Collections.nCopies(rows, places)));
    }
  }

  /** Changes the row of an identity; gives how many rows that were. */
  public int amend(String table, UUID id, RowValues row) {
    return update(
        "UPDATE %s SET %s = ? WHERE id = ?".formatted(table, String.join(" = ?, ", row.columns())),
        Stream.concat(row.values().stream(), Stream.of(id)).toArray());
  }

  /**
   * Runs work that writes, all of it or none. The right to write is taken at the start, so that two
   * programs never come to blows halfway. A nested call is kept or undone as a whole too, within
   * the outer one.
   */
  public <T> T inTransaction(Supplier<T> work) {
    return turn.isHeldByCurrentThread() && depth > 0
        ? between("SAVEPOINT inner", "RELEASE inner", "ROLLBACK TO inner", work)
        : between("BEGIN IMMEDIATE", "COMMIT", "ROLLBACK", work);
  }

  /** Runs work that reads in several queries and must see one state of the log throughout. */
  public <T> T inSnapshot(Supplier<T> work) {
    return turn.isHeldByCurrentThread() && depth > 0
        ? work.get()
        : between("BEGIN DEFERRED", "COMMIT", "ROLLBACK", work);
  }

  private <T> T between(String begin, String keep, String undo, Supplier<T> work) {
    turn.lock();
    try {
      change(begin);
      depth++;
      boolean kept = false;
      try {
        T result = work.get();
        change(keep);
        kept = true;
        return result;
      } finally {
        depth--;
        if (!kept) {
          undo(undo);
        }
      }
    } finally {
      turn.unlock();
    }
  }

  /** A failure here must not hide the one that led here; SQLite may have rolled back by itself. */
  private void undo(String sql) {
    if (behind != null) {
      behind.finish();
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
      if (sql.startsWith("ROLLBACK TO")) {
        statement.execute("RELEASE inner");
      }
    } catch (SQLException e) {
      return;
    }
  }

  /**
   * The driver gives up a statement that failed badly, as on a full disk; the next use is fresh.
   */
  private Refusal failed(String sql, SQLException failure) {
    PreparedStatement spent = prepared.remove(sql);
    try {
      if (spent != null) {
        spent.close();
      }
    } catch (SQLException e) {
      failure.addSuppressed(e);
    }
    return SqlFailures.of(failure, file);
  }

  private PreparedStatement bound(String sql, Object... values) throws SQLException {
    PreparedStatement statement = prepared.get(sql);
    if (statement == null) {
      statement = connection.prepareStatement(sql);
      prepared.put(sql, statement);
    }
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, plain(values[i]));
    }
    return statement;
  }

  private static Object plain(Object value) {
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

  @Override
  public void close() {
    turn.lock();
    try {
      for (PreparedStatement statement : prepared.values()) {
        statement.close();
      }
      prepared.clear();
      connection.close();
    } catch (SQLException e) {
      throw SqlFailures.of(e, file);
    } finally {
      closed.run();
      turn.unlock();
    }
  }
}
