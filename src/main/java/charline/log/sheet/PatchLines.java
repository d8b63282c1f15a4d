package charline.log.sheet;

import java.util.Arrays;
import java.util.Locale;

/**
 * How many lines each code of a sheet has, so that a patch is handed on as soon as its last line
 * was read. Kept by a hash of 64 bits, as a large sheet has many codes: should two codes share one,
 * the patches wait for each other and nothing else.
 */
final class PatchLines {
  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;
  private static final int FIRST_ROOM = 1024;

  /** Hashes of codes as they come, with how many lines each has there in a row. */
  private long[] codes = new long[FIRST_ROOM];

  private int[] lines = new int[FIRST_ROOM];
  private int size;

  /** Codes that differ in capitals alone are one. */
  static String key(String code) {
    return code.toLowerCase(Locale.ROOT);
  }

  /** Counts a line; those without a code are patches of their own. */
  void add(String code) {
    if (code.isEmpty()) {
      return;
    }
    long hash = hash(key(code));
    if (size == 0 || codes[size - 1] != hash) {
      if (size == codes.length) {
        codes = Arrays.copyOf(codes, 2 * size);
        lines = Arrays.copyOf(lines, 2 * size);
      }
      codes[size++] = hash;
    }
    lines[size - 1]++;
  }

  /** All lines counted so far, to be taken off. */
  Left left() {
    long[] sorted = Arrays.copyOf(codes, size);
    Arrays.sort(sorted);
    int distinct = 0;
    for (long code : sorted) {
      if (distinct == 0 || sorted[distinct - 1] != code) {
        sorted[distinct++] = code;
      }
    }
    Left left = new Left(Arrays.copyOf(sorted, distinct), new int[distinct]);
    for (int i = 0; i < size; i++) {
      left.lines[left.at(codes[i])] += lines[i];
    }
    return left;
  }

  /** Lines of each code that are still to come. */
  static final class Left {
    private final long[] codes;
    private final int[] lines;

    /**
     * @param codes hashes, sorted
     * @param lines of each
     */
    private Left(long[] codes, int[] lines) {
      this.codes = codes;
      this.lines = lines;
    }

    private int at(long code) {
      return Arrays.binarySearch(codes, code);
    }

    /** Takes a line off; true if it was the last of its code. */
    boolean takeLast(String key) {
      return --lines[at(hash(key))] <= 0;
    }
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
