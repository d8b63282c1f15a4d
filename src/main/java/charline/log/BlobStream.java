package charline.log;

import charline.log.database.Database;
import java.io.InputStream;
import java.util.Optional;
import java.util.UUID;

/**
 * A large value read piece by piece, each in a query of its own: whoever reads slowly neither keeps
 * it in memory nor keeps others from the log.
 */
final class BlobStream extends InputStream {
  private static final int PIECE_BYTES = 1 << 20;

  private final Database database;
  private final String sql;
  private final UUID id;
  private byte[] piece = new byte[0];
  private int at;
  private long next = 1;
  private boolean over;

  /**
   * @param sql gives a column {@code piece} for a start, counted from 1, a length and an identity
   */
  BlobStream(Database database, String sql, UUID id) {
    this.database = database;
    this.sql = sql;
    this.id = id;
  }

  @Override
  public int read() {
    return fill() ? piece[at++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] into, int from, int most) {
    if (most == 0) {
      return 0;
    }
    if (!fill()) {
      return -1;
    }
    int count = Math.min(most, piece.length - at);
    System.arraycopy(piece, at, into, from, count);
    at += count;
    return count;
  }

  private boolean fill() {
    if (at < piece.length) {
      return true;
    }
    if (over) {
      return false;
    }
    Optional<byte[]> read = database.first(sql, row -> row.bytes("piece"), next, PIECE_BYTES, id);
    piece = read.orElseGet(() -> new byte[0]);
    at = 0;
    next += piece.length;
    over = piece.length < PIECE_BYTES;
    return piece.length > 0;
  }
}
