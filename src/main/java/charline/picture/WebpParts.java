package charline.picture;

import charline.picture.BarePicture.CutOffException;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Set;

/**
 * A WebP file, chunk by chunk. Kept are the picture, its transparency, its movement and its colour
 * profile. Source: RFC 9649, sections 2 (container), 2.5 to 2.7; the sizes from RFC 6386, section
 * 9.1, and RFC 9649, section 3.4.
 */
final class WebpParts {
  private static final int HEADER = 12;
  private static final int FRAMING = 8;
  private static final int EXIF_FLAG = 0x08;
  private static final int XMP_FLAG = 0x04;
  private static final int FOURTEEN_BITS = 0x3FFF;
  private static final Set<String> NEEDED =
      Set.of("VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP");

  private final ByteBuffer in;
  private final byte[] file;
  private int width;
  private int height;

  WebpParts(byte[] file) {
    this.file = file;
    in = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
  }

  BarePicture bare() {
    ByteArrayOutputStream out = new ByteArrayOutputStream(file.length);
    out.write(file, 0, HEADER);
    int turn = Turn.NONE;
    int extended = -1;
    long end = FRAMING + Integer.toUnsignedLong(in.getInt(4));
    if (end > file.length) {
      throw new CutOffException("the file");
    }
    int at = HEADER;
    while (at + FRAMING <= end) {
      String name = new String(file, at, 4, StandardCharsets.ISO_8859_1);
      long length = Integer.toUnsignedLong(in.getInt(at + 4));
      long padded = length + (length & 1);
      if (at + FRAMING + length > end) {
        throw new CutOffException("a chunk");
      }
      int body = at + FRAMING;
      if (name.equals("EXIF")) {
        turn = Turn.of(note(body, (int) length));
      } else if (NEEDED.contains(name)) {
        if (name.equals("VP8X")) {
          extended = out.size() + FRAMING;
        }
        size(name, body);
        put(out, name, body, (int) length);
      }
      at = (int) Math.min(end, at + FRAMING + padded);
    }
    if (width == 0 || height == 0) {
      throw new CutOffException("no size");
    }
    boolean turned = turn != Turn.NONE && extended >= 0;
    if (turned) {
      byte[] note = Turn.note(turn);
      byte[] head = head("EXIF", note.length);
      out.writeBytes(head);
      out.writeBytes(note);
    }
    byte[] all = out.toByteArray();
    if (extended >= 0) {
      all[extended] &= (byte) ~(EXIF_FLAG | XMP_FLAG);
      all[extended] |= (byte) (turned ? EXIF_FLAG : 0);
    }
    ByteBuffer.wrap(all).order(ByteOrder.LITTLE_ENDIAN).putInt(4, all.length - FRAMING);
    return new BarePicture(PictureKind.WEBP, all, width, height);
  }

  /** Some writers put the word of a JPEG before the note. */
  private byte[] note(int body, int length) {
    boolean worded = length > 6 && file[body] == 'E' && file[body + 1] == 'x';
    return Arrays.copyOfRange(file, body + (worded ? 6 : 0), body + length);
  }

  /** Takes the size of the whole picture: the first chunk says it. */
  private void size(String name, int body) {
    if (width > 0) {
      return;
    }
    switch (name) {
      case "VP8X" -> {
        width = 1 + (in.getInt(body + 4) & 0xFFFFFF);
        height = 1 + (in.getInt(body + 6) >>> 8);
      }
      case "VP8 " -> {
        width = in.getShort(body + 6) & FOURTEEN_BITS;
        height = in.getShort(body + 8) & FOURTEEN_BITS;
      }
      case "VP8L" -> {
        int bits = in.getInt(body + 1);
        width = 1 + (bits & FOURTEEN_BITS);
        height = 1 + (bits >>> 14 & FOURTEEN_BITS);
      }
      default -> {}
    }
  }

  private void put(ByteArrayOutputStream out, String name, int body, int length) {
    out.writeBytes(head(name, length));
    out.write(file, body, length);
    if ((length & 1) == 1) {
      out.write(0);
    }
  }

  private static byte[] head(String name, int length) {
    return ByteBuffer.allocate(FRAMING)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(name.getBytes(StandardCharsets.US_ASCII))
        .putInt(length)
        .array();
  }
}
