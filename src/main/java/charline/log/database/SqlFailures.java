package charline.log.database;

import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What SQLite says, in one sentence for the person. */
public final class SqlFailures {
  private static final Pattern IN_BRACKETS = Pattern.compile("\\((.*)\\)\\s*$", Pattern.DOTALL);
  private static final Pattern RULE = Pattern.compile("CHECK constraint failed: (\\w+)");
  private static final Pattern COLUMN =
      Pattern.compile("(?:UNIQUE|NOT NULL) constraint failed: (\\w+)\\.(\\w+)");

  /** Opening a log needs a small file beside it, also for reading. */
  private static final Set<SQLiteErrorCode> FAILS_WHEN_FULL =
      Set.of(SQLiteErrorCode.SQLITE_IOERR, SQLiteErrorCode.SQLITE_CANTOPEN);

  /** What SQLite needs beside a log that is open, in bytes. */
  private static final long LEAST_ROOM = 64 * 1024;

  private SqlFailures() {}

  private static boolean isFull(Path file) {
    try {
      return Files.getFileStore(file.toAbsolutePath().getParent()).getUsableSpace() < LEAST_ROOM;
    } catch (IOException e) {
      return false;
    }
  }

  public static Refusal of(SQLException failure, Path file) {
    return Refusal.data(sentence(failure, file), failure);
  }

  /** True if the file itself is broken or was never an SQLite file. */
  public static boolean damaged(SQLException failure) {
    return switch (code(failure) & 0xFF) {
      case 11, 26 -> true; // SQLITE_CORRUPT, SQLITE_NOTADB
      default -> false;
    };
  }

  /** True if another program holds the log just now. */
  public static boolean busy(SQLException failure) {
    return SQLiteErrorCode.getErrorCode(code(failure) & 0xFF) == SQLiteErrorCode.SQLITE_BUSY;
  }

  /** True if the row would break a rule of the schema. */
  public static boolean breaksRule(SQLException failure) {
    return SQLiteErrorCode.getErrorCode(code(failure) & 0xFF) == SQLiteErrorCode.SQLITE_CONSTRAINT;
  }

  /** A copy that could not be written; the log itself is as it was. */
  public static Refusal ofCopying(SQLException failure, Path file, Path copy) {
    return switch (SQLiteErrorCode.getErrorCode(code(failure) & 0xFF)) {
      case SQLITE_FULL ->
          Refusal.data(
              "The disk is full, so no copy of %s was made in %s; make room there or choose another place."
                  .formatted(file, copy.getParent()),
              failure);
      case SQLITE_CANTOPEN, SQLITE_READONLY, SQLITE_IOERR ->
          Refusal.data(
              "No copy of %s can be written in %s (%s); check that folder or choose another place."
                  .formatted(file, copy.getParent(), reason(failure)),
              failure);
      default -> of(failure, file);
    };
  }

  /** The refusal where the jar holds no SQLite for this system. */
  private static Optional<String> unserved(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof NativeLibraryNotFoundException) {
        return Optional.of(
            "charline brings no SQLite for this computer (%s, %s); it needs Linux, macOS or Windows on an x86_64 or aarch64 processor, or Linux on armv7."
                .formatted(System.getProperty("os.name"), System.getProperty("os.arch")));
      }
    }
    return Optional.empty();
  }

  private static String sentence(SQLException failure, Path file) {
    Optional<String> unserved = unserved(failure);
    if (unserved.isPresent()) {
      return unserved.get();
    }
    if (damaged(failure)) {
      return damage(file, reason(failure));
    }
    SQLiteErrorCode primary = SQLiteErrorCode.getErrorCode(code(failure) & 0xFF);
    if (FAILS_WHEN_FULL.contains(primary) && isFull(file)) {
      return "The disk of the log %s is full, so the log cannot be opened; make room and try again."
          .formatted(file);
    }
    return switch (primary) {
      case SQLITE_FULL ->
          "The disk is full, so nothing was recorded in %s; make room and record it again."
              .formatted(file);
      case SQLITE_BUSY, SQLITE_LOCKED ->
          "Another program locked the log %s for more than 5 s, so nothing was recorded; try again."
              .formatted(file);
      case SQLITE_READONLY ->
          "The log %s is write-protected; make it writable or choose another log.".formatted(file);
      case SQLITE_CANTOPEN ->
          "The log %s cannot be opened; check the folder's permissions or choose another log."
              .formatted(file);
      case SQLITE_IOERR ->
          "The log %s cannot be read or written (%s); check the disk and try again."
              .formatted(file, reason(failure));
      case SQLITE_CONSTRAINT -> rule(failure);
      default -> "The log %s reported an error: %s.".formatted(file, reason(failure));
    };
  }

  public static String damage(Path file, String reason) {
    return "The log %s is damaged (%s); it was not changed. Restore the latest backup, or make a copy of the file before any repair."
        .formatted(file, reason);
  }

  private static String rule(SQLException failure) {
    String reason = reason(failure);
    if (code(failure) == SQLiteErrorCode.SQLITE_CONSTRAINT_TRIGGER.code) {
      return reason + "."; // our own triggers speak in sentences
    }
    if (code(failure) == SQLiteErrorCode.SQLITE_CONSTRAINT_FOREIGNKEY.code) {
      return "Nothing was recorded: the record refers to something that is not in this log; add"
          + " that first.";
    }
    Matcher named = RULE.matcher(reason);
    if (named.find()) {
      return "Nothing was recorded: it breaks the log's rule \"%s\"."
          .formatted(named.group(1).replace('_', ' '));
    }
    Matcher column = COLUMN.matcher(reason);
    if (column.find()) {
      String words = column.group(1).replace('_', ' ') + " " + column.group(2).replace('_', ' ');
      return code(failure) == SQLiteErrorCode.SQLITE_CONSTRAINT_NOTNULL.code
          ? "Nothing was recorded: the %s is missing; give it.".formatted(words)
          : "Nothing was recorded: the %s is taken already; choose another.".formatted(words);
    }
    return "Nothing was recorded: %s.".formatted(reason);
  }

  /** SQLite's own words, without the driver's, in one line. */
  private static String reason(SQLException failure) {
    String said = String.valueOf(failure.getMessage());
    Matcher inner = IN_BRACKETS.matcher(said);
    return oneLine(inner.find() ? inner.group(1) : said);
  }

  /** A reason that closes no sentence and breaks no line. */
  public static String oneLine(String reason) {
    return reason.replaceAll("[\\s\\p{Cntrl}]+", " ").strip().replaceFirst("\\.$", "");
  }

  private static int code(SQLException failure) {
    return failure instanceof SQLiteException e ? e.getResultCode().code : failure.getErrorCode();
  }
}
