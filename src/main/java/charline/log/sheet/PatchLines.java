package charline.log.sheet;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * How many lines each code of a sheet has, so that a patch is handed on as soon as its last line
 * was read. Kept by a hash of 64 bits, as a large sheet has many codes: should two codes share one,
 * the patches wait for each other and nothing else.
 */
final class PatchLines {
  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  private final Map<Long, Integer> left;

  PatchLines() {
    this(new HashMap<>());
  }

  private PatchLines(Map<Long, Integer> left) {
    this.left = left;
  }

  /** Codes that differ in capitals alone are one. */
  static String key(String code) {
    return code.toLowerCase(Locale.ROOT);
  }

  /** Counts a line; those without a code are patches of their own. */
  void add(String code) {
    if (!code.isEmpty()) {
      left.merge(hash(key(code)), 1, Integer::sum);
    }
  }

  /** Takes a line off; true if it was the last of its code. */
  boolean takeLast(String key) {
    return left.merge(hash(key), -1, Integer::sum) <= 0;
  }

  /** The same counts, to be taken off again. */
  PatchLines copy() {
    return new PatchLines(new HashMap<>(left));
  }

  /** The hash of Fowler, Noll and Vo, 1a (RFC 9923, section 2). */
  private static long hash(String text) {
    long hash = FNV_OFFSET;
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * FNV_PRIME;
    }
    return hash;
  }
}
