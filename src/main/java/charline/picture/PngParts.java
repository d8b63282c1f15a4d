package charline.picture;

import charline.picture.BarePicture.CutOffException;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Set;
import java.util.zip.CRC32;

/**
 * A PNG file, chunk by chunk. Kept are the picture, what its colours mean and how large a pixel is.
 * Source: W3C, Portable Network Graphics (PNG) Specification, third edition, chapter 11.
 */
final class PngParts {
  private static final int SIGNATURE = 8;
  private static final int FRAMING = 12;
  private static final Set<String> NEEDED =
      Set.of(
          "IHDR", "PLTE", "IDAT", "IEND", "tRNS", "cHRM", "gAMA", "iCCP", "sBIT", "sRGB", "cICP",
          "mDCV", "cLLI", "bKGD", "hIST", "pHYs", "acTL", "fcTL", "fdAT");

  private final byte[] file;

  PngParts(byte[] file) {
    this.file = file;
  }

  BarePicture bare() {
    ByteBuffer in = ByteBuffer.wrap(file);
    int turn = turn(in);
    ByteArrayOutputStream out = new ByteArrayOutputStream(file.length);
    out.write(file, 0, SIGNATURE);
    int width = 0;
    int height = 0;
    int at = SIGNATURE;
    while (true) {
      int length = length(in, at);
      String name = name(at);
      if (NEEDED.contains(name)) {
        out.write(file, at, length + FRAMING);
      }
      if (name.equals("IHDR")) {
        width = in.getInt(at + SIGNATURE);
        height = in.getInt(at + SIGNATURE + 4);
        if (turn != Turn.NONE) {
          out.writeBytes(chunk("eXIf", Turn.note(turn)));
        }
      }
      if (name.equals("IEND")) {
        break;
      }
      at += length + FRAMING;
    }
    if (width <= 0 || height <= 0) {
      throw new CutOffException("no size");
    }
    return new BarePicture(PictureKind.PNG, out.toByteArray(), width, height);
  }

  /** Read first: the note may come after the picture, and is written before it. */
  private int turn(ByteBuffer in) {
    int at = SIGNATURE;
    while (!name(at).equals("IEND")) {
      int length = length(in, at);
      if (name(at).equals("eXIf")) {
        return Turn.of(Arrays.copyOfRange(file, at + SIGNATURE, at + SIGNATURE + length));
      }
      at += length + FRAMING;
    }
    return Turn.NONE;
  }

  private int length(ByteBuffer in, int at) {
    int length = in.getInt(at);
    if (length < 0 || length > file.length - at - FRAMING) {
      throw new CutOffException("a chunk");
    }
    return length;
  }

  private String name(int at) {
    return new String(file, at + 4, 4, StandardCharsets.ISO_8859_1);
  }

  private static byte[] chunk(String name, byte[] body) {
    byte[] named =
        ByteBuffer.allocate(4 + body.length)
            .put(name.getBytes(StandardCharsets.US_ASCII))
            .put(body)
            .array();
    CRC32 sum = new CRC32();
    sum.update(named);
    return ByteBuffer.allocate(body.length + FRAMING)
        .putInt(body.length)
        .put(named)
        .putInt((int) sum.getValue())
        .array();
  }
}
