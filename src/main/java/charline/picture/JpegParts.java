package charline.picture;

import charline.picture.BarePicture.CutOffException;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * A JPEG file, segment by segment. Kept are the tables, frames and scans of its first picture, the
 * resolution (JFIF, without its small picture), the meaning of the colours (Adobe) and the colour
 * profile (ICC). Sources: ITU-T T.81, annex B; T.871; ICC.1:2022, annex B.4.
 */
final class JpegParts {
  private static final int SOI = 0xD8;
  private static final int EOI = 0xD9;
  private static final int SOS = 0xDA;
  private static final int APP0 = 0xE0;
  private static final int APP1 = 0xE1;
  private static final int APP2 = 0xE2;
  private static final int APP14 = 0xEE;
  private static final int JFIF_BYTES = 14;
  private static final byte[] JFIF = ascii("JFIF\0");
  private static final byte[] EXIF = ascii("Exif\0\0");
  private static final byte[] PROFILE = ascii("ICC_PROFILE\0");
  private static final byte[] ADOBE = ascii("Adobe");

  private final byte[] file;
  private final ByteArrayOutputStream tables = new ByteArrayOutputStream();
  private final ByteArrayOutputStream picture = new ByteArrayOutputStream();
  private int at = 2;
  private int turn = Turn.NONE;
  private int width;
  private int height;

  JpegParts(byte[] file) {
    this.file = file;
  }

  BarePicture bare() {
    while (true) {
      int marker = marker();
      if (marker == EOI) {
        break;
      }
      if (isAlone(marker)) {
        continue;
      }
      int length = (file[at] & 0xFF) << 8 | file[at + 1] & 0xFF;
      int from = at + 2;
      int to = at + length;
      if (length < 2 || to > file.length) {
        throw new CutOffException("a segment");
      }
      at = to;
      segment(marker, from, to);
      if (marker == SOS) {
        scan();
      }
    }
    if (width == 0 || height == 0) {
      throw new CutOffException("no frame");
    }
    return new BarePicture(PictureKind.JPEG, whole(), width, height);
  }

  private byte[] whole() {
    ByteArrayOutputStream all = new ByteArrayOutputStream(file.length);
    all.write(0xFF);
    all.write(SOI);
    all.writeBytes(tables.toByteArray());
    if (turn != Turn.NONE) {
      byte[] note = Turn.note(turn);
      byte[] body = Arrays.copyOf(EXIF, EXIF.length + note.length);
      System.arraycopy(note, 0, body, EXIF.length, note.length);
      put(all, APP1, body, 0, body.length);
    }
    all.writeBytes(picture.toByteArray());
    all.write(0xFF);
    all.write(EOI);
    return all.toByteArray();
  }

  /** The next marker; fill bytes before it are passed over. */
  private int marker() {
    if (file[at++] != (byte) 0xFF) {
      throw new CutOffException("no marker");
    }
    while (file[at] == (byte) 0xFF) {
      at++;
    }
    return file[at++] & 0xFF;
  }

  /** Markers that no length follows. */
  private static boolean isAlone(int marker) {
    return marker == 0x01 || marker >= 0xD0 && marker <= SOI;
  }

  private void segment(int marker, int from, int to) {
    if (marker == APP0 && begins(from, to, JFIF) && to - from >= JFIF_BYTES) {
      byte[] body = Arrays.copyOfRange(file, from, from + JFIF_BYTES);
      body[JFIF_BYTES - 2] = 0; // no small picture
      body[JFIF_BYTES - 1] = 0;
      put(tables, marker, body, 0, body.length);
    } else if (marker == APP1 && begins(from, to, EXIF) && turn == Turn.NONE) {
      turn = Turn.of(Arrays.copyOfRange(file, from + EXIF.length, to));
    } else if (isNeeded(marker, from, to)) {
      put(picture, marker, file, from, to - from);
    }
    if (isFrame(marker)) {
      height = (file[from + 1] & 0xFF) << 8 | file[from + 2] & 0xFF;
      width = (file[from + 3] & 0xFF) << 8 | file[from + 4] & 0xFF;
    }
  }

  private boolean isNeeded(int marker, int from, int to) {
    boolean table = marker >= 0xC0 && marker <= 0xCF || marker >= SOS && marker <= 0xDF;
    return table
        || marker == APP2 && begins(from, to, PROFILE)
        || marker == APP14 && begins(from, to, ADOBE);
  }

  /** Start of a frame: every C marker but the tables of Huffman (C4), arithmetic (CC) and JPG. */
  private static boolean isFrame(int marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
  }

  /** The coded lines up to the next marker; FF in them is followed by 00 or by a restart. */
  private void scan() {
    int from = at;
    while (file[at] != (byte) 0xFF
        || file[at + 1] == 0
        || (file[at + 1] & 0xFF) >= 0xD0 && (file[at + 1] & 0xFF) <= 0xD7) {
      at++;
    }
    picture.write(file, from, at - from);
  }

  private boolean begins(int from, int to, byte[] word) {
    return to - from >= word.length
        && Arrays.equals(file, from, from + word.length, word, 0, word.length);
  }

  private static void put(
      ByteArrayOutputStream out, int marker, byte[] bytes, int from, int length) {
    out.write(0xFF);
    out.write(marker);
    out.write(length + 2 >> 8);
    out.write(length + 2);
    out.write(bytes, from, length);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
