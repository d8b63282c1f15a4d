package charline.cache;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import java.util.Map;

/**
 * All that a value is computed from, and nothing else. Whatever of it comes up in the value again
 * is kept as a reference to it.
 *
 * <p>It is looked through once, when it is first needed.
 */
public final class Basis {
  private final Basis before;
  private final List<Object> parts;
  private final List<Object> derived;
  private Seen seen;
  private byte[] digest;

  private Basis(Basis before, List<Object> parts, List<Object> derived) {
    this.before = before;
    this.parts = parts;
    this.derived = derived;
  }

  /**
   * @param parts records, enums, numbers, text, times, and optionals, lists, maps and sets of them
   */
  public static Basis of(Object... parts) {
    return new Basis(null, List.of(parts), List.of());
  }

  /** These and more. */
  public Basis with(Object... more) {
    return new Basis(this, List.of(more), List.of());
  }

  /**
   * The same with values that were computed from it already and come up in what is computed next.
   *
   * @param values records, always as many of them in this order for the same basis
   */
  public Basis knowing(Object... values) {
    return new Basis(this, List.of(), List.of(values));
  }

  /** SHA-256 over all parts. */
  synchronized byte[] digest() {
    look();
    return digest;
  }

  /** What came by in them. */
  synchronized Seen seen() {
    look();
    return seen;
  }

  private void look() {
    if (seen != null) {
      return;
    }
    Seen now = before == null ? new Seen() : new Seen(before.seen());
    MessageDigest sum = sha256();
    if (before != null) {
      sum.update(before.digest());
    }
    try (OutputStream out =
        new BufferedOutputStream(
            new DigestOutputStream(OutputStream.nullOutputStream(), sum), 1 << 13)) {
      ValueWriter writer = new ValueWriter(out, now, Map.of(), true);
      for (Object part : parts) {
        writer.write(part);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    for (Object value : derived) {
      if (now.records().number(value).isEmpty()) {
        now.records().add(value);
      }
    }
    digest = sum.digest();
    seen = now;
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java has it
    }
  }
}
