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

  /** Works in place of the thread whose turn it is, where that asked for it; else null. */
  private volatile WorkBehind behind;

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
    takeTurn();
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
      endTurn();
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
    takeTurn();
    try {
      settle();
      return bound(sql, values).executeUpdate();
    } catch (SQLException e) {
      throw failed(sql, e);
    } finally {
      endTurn();
    }
  }

  /** Whether this is called from work behind: the turn is that of the thread it works for. */
  private boolean isBehind() {
    WorkBehind working = behind;
    return working != null && working.isWithin();
  }

  private void takeTurn() {
    if (!isBehind()) {
      turn.lock();
    }
  }

  private void endTurn() {
    if (!isBehind()) {
      turn.unlock();
    }
  }

  private boolean isInTransaction() {
    return (isBehind() || turn.isHeldByCurrentThread()) && depth > 0;
  }

  private void settle() {
    if (behind != null && !isBehind()) {
      behind.settle();
    }
  }

  /**
   * Runs work that leaves some of its work to {@link #later}, which another thread does meanwhile.
   * Whatever asks the log in between waits for that. What goes wrong with it is told later than
   * otherwise, so this has to be part of a transaction that is then given up.
   */
  public <T> T workingBehind(Supplier<T> work) {
    takeTurn();
    try {
      return behind == null ? withWorker(work) : work.get();
    } finally {
      endTurn();
    }
  }

  private <T> T withWorker(Supplier<T> work) {
    try (WorkBehind working = new WorkBehind()) {
      behind = working;
      T result = work.get();
      working.settle();
      return result;
    } finally {
      behind = null;
    }
  }

  /** Leaves work to be done behind, where this is part of work that does so; else does it. */
  public void later(Runnable work) {
    takeTurn();
    try {
      if (behind == null || isBehind()) {
        work.run();
      } else {
        behind.add(work);
      }
    } finally {
      endTurn();
    }
  }

  /** Adds a row to a table. */
  public void insert(String table, RowValues row) {
    insert(table, List.of(row));
  }

  /** Adds rows to a table, all of the same columns; many of them in few statements. */
  public void insert(String table, List<RowValues> rows) {
    for (int from = 0; from < rows.size(); from += ROWS_AT_ONCE) {
      RowsOfValues some =
          RowsOfValues.of(rows.subList(from, Math.min(from + ROWS_AT_ONCE, rows.size())));
      update(
          inserts.computeIfAbsent(new Insert(table, some.columns(), some.rows()), Insert::sql),
          some.values());
    }
  }

  /** Places for some values in a statement: "(?, ?)" for two. */
  public static String places(int count) {
    return "(" + String.join(", ", Collections.nCopies(count, "?")) + ")";
  }

  private record Insert(String table, List<String> columns, int rows) {
    String sql() {
      String places = places(columns.size());
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
    return isInTransaction()
        ? between("SAVEPOINT inner", "RELEASE inner", "ROLLBACK TO inner", work)
        : between("BEGIN IMMEDIATE", "COMMIT", "ROLLBACK", work);
  }

  /** Runs work that reads in several queries and must see one state of the log throughout. */
  public <T> T inSnapshot(Supplier<T> work) {
    return isInTransaction() ? work.get() : between("BEGIN DEFERRED", "COMMIT", "ROLLBACK", work);
  }

  private <T> T between(String begin, String keep, String undo, Supplier<T> work) {
    takeTurn();
    try {
      update(begin);
      depth++;
      boolean kept = false;
      try {
        T result = work.get();
        update(keep);
        kept = true;
        return result;
      } finally {
        if (!kept) {
          finish();
        }
        depth--;
        if (!kept) {
          undo(undo);
        }
      }
    } finally {
      endTurn();
    }
  }

  private void finish() {
    if (behind != null && !isBehind()) {
      behind.finish();
    }
  }

  /** A failure here must not hide the one that led here; SQLite may have rolled back by itself. */
  private void undo(String sql) {
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
      statement.setObject(i + 1, RowValues.plain(values[i]));
    }
    return statement;
  }

  @Override
  public void close() {
    takeTurn();
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
      endTurn();
    }
  }
}
