package charline.picture;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * How a picture is to be turned, as the Exif note of a camera says it and as one that says nothing
 * else. Source: CIPA DC-008, Exif 2.32, section 4.6.4, tag 274 (Orientation).
 */
final class Turn {
  /** As it lies in the file. */
  static final int NONE = 1;

  private static final int LAST = 8;
  private static final int ORIENTATION = 0x0112;
  private static final int SHORT = 3;
  private static final int HEADER = 8;
  private static final int ENTRY = 12;

  private Turn() {}

  /**
   * What a note says; {@link #NONE} where it says nothing, or nothing that can be read.
   *
   * @param note the Exif note from its byte order mark on
   */
  static int of(byte[] note) {
    if (note.length < HEADER + 2) {
      return NONE;
    }
    ByteBuffer tiff = ByteBuffer.wrap(note);
    if (note[0] == 'I') {
      tiff.order(ByteOrder.LITTLE_ENDIAN);
    }
    int at = tiff.getInt(4);
    if (at < HEADER || at > note.length - 2) {
      return NONE;
    }
    int entries = Short.toUnsignedInt(tiff.getShort(at));
    for (int i = 0; i < entries && at + 2 + (i + 1) * ENTRY <= note.length; i++) {
      int entry = at + 2 + i * ENTRY;
      if (Short.toUnsignedInt(tiff.getShort(entry)) == ORIENTATION
          && tiff.getShort(entry + 2) == SHORT) {
        int turn = Short.toUnsignedInt(tiff.getShort(entry + HEADER));
        return turn > NONE && turn <= LAST ? turn : NONE;
      }
    }
    return NONE;
  }

  /** A note that says how to turn a picture, and nothing else. */
  static byte[] note(int turn) {
    return ByteBuffer.allocate(HEADER + 2 + ENTRY + 4)
        .put("MM".getBytes(StandardCharsets.US_ASCII))
        .putShort((short) 42)
        .putInt(HEADER)
        .putShort((short) 1)
        .putShort((short) ORIENTATION)
        .putShort((short) SHORT)
        .putInt(1)
        .putShort((short) turn)
        .putShort((short) 0)
        .putInt(0)
        .array();
  }
}
