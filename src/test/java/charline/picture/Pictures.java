package charline.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Small pictures, and what cameras put into their files. */
public final class Pictures {
  private Pictures() {}

  /** A board with a dark patch, as "png" or "jpg". */
  public static byte[] plain(String format) {
    BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    Graphics2D brush = image.createGraphics();
    brush.setColor(Color.ORANGE);
    brush.fillRect(0, 0, 40, 30);
    brush.setColor(Color.DARK_GRAY);
    brush.fillRect(5, 5, 12, 9);
    brush.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, format, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /**
   * An Exif note of a camera with its maker, serial number and position.
   *
   * @param turn 1 to 8
   */
  static byte[] note(ByteOrder order, int turn) {
    ByteBuffer tiff = ByteBuffer.allocate(200).order(order);
    tiff.put((order == ByteOrder.BIG_ENDIAN ? "MM" : "II").getBytes(StandardCharsets.US_ASCII));
    tiff.putShort((short) 42).putInt(8).putShort((short) 3);
    tiff.putShort((short) 0x010F).putShort((short) 2).putInt(12).putInt(80); // maker
    tiff.putShort((short) 0x0112).putShort((short) 3).putInt(1);
    tiff.putShort((short) turn).putShort((short) 0);
    tiff.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(120); // position
    tiff.putInt(0);
    tiff.position(80);
    tiff.put("Boat Camera\0SERIAL-4711 LAKE-47.3N-8.5E".getBytes(StandardCharsets.US_ASCII));
    return tiff.array();
  }

  /** A JPEG picture with a camera's notes, a comment, and a second picture after its end. */
  public static byte[] jpegOfACamera(ByteOrder order, int turn) {
    byte[] plain = plain("jpg");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, 2);
    segment(out, 0xE1, join("Exif\0\0".getBytes(StandardCharsets.US_ASCII), note(order, turn)));
    segment(
        out,
        0xE1,
        "http://ns.adobe.com/xap/1.0/\0<x>SERIAL-4711</x>".getBytes(StandardCharsets.US_ASCII));
    segment(out, 0xE2, "ICC_PROFILE\0\1\1 colours".getBytes(StandardCharsets.US_ASCII));
    segment(out, 0xE2, "MPF\0 SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    segment(out, 0xED, "Photoshop 3.0\0 SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    segment(out, 0xFE, "SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    out.write(plain, 2, plain.length - 2);
    out.writeBytes("moving picture SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    return out.toByteArray();
  }

  /** A PNG picture with notes. */
  public static byte[] pngOfACamera(int turn) {
    byte[] plain = plain("png");
    int end = plain.length - 12;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, end);
    chunk(out, "tEXt", "Author\0SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    chunk(out, "eXIf", note(ByteOrder.BIG_ENDIAN, turn));
    out.write(plain, end, 12);
    out.writeBytes("SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    return out.toByteArray();
  }

  /**
   * A PNG file that says it is of a size, without lines.
   *
   * @param pixels width and height
   */
  static byte[] pngOfSize(int pixels) {
    byte[] plain = plain("png");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, 8);
    ByteBuffer head = ByteBuffer.allocate(13).putInt(pixels).putInt(pixels);
    head.put(new byte[] {8, 2, 0, 0, 0});
    chunk(out, "IHDR", head.array());
    chunk(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  /**
   * A WebP file with the parts of a picture, notes among them; the picture's own bytes are made up.
   */
  static byte[] webpOfACamera(int turn) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    part(body, "VP8X", new byte[] {0x0C, 0, 0, 0, 39, 0, 0, 29, 0, 0});
    part(body, "VP8 ", new byte[] {1, 2, 3, (byte) 0x9D, 1, 42, 40, 0, 30, 0, 7});
    part(body, "EXIF", note(ByteOrder.LITTLE_ENDIAN, turn));
    part(body, "XMP ", "SERIAL-4711".getBytes(StandardCharsets.US_ASCII));
    byte[] parts = body.toByteArray();
    return ByteBuffer.allocate(12 + parts.length)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put("RIFF".getBytes(StandardCharsets.US_ASCII))
        .putInt(parts.length + 4)
        .put("WEBP".getBytes(StandardCharsets.US_ASCII))
        .put(parts)
        .array();
  }

  private static byte[] join(byte[] one, byte[] other) {
    byte[] both = Arrays.copyOf(one, one.length + other.length);
    System.arraycopy(other, 0, both, one.length, other.length);
    return both;
  }

  private static void segment(ByteArrayOutputStream out, int marker, byte[] body) {
    out.write(0xFF);
    out.write(marker);
    out.write(body.length + 2 >> 8);
    out.write(body.length + 2);
    out.writeBytes(body);
  }

  private static void chunk(ByteArrayOutputStream out, String name, byte[] body) {
    byte[] named = join(name.getBytes(StandardCharsets.US_ASCII), body);
    CRC32 sum = new CRC32();
    sum.update(named);
    out.writeBytes(ByteBuffer.allocate(4).putInt(body.length).array());
    out.writeBytes(named);
    out.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
  }

  private static void part(ByteArrayOutputStream out, String name, byte[] body) {
    out.writeBytes(name.getBytes(StandardCharsets.US_ASCII));
    out.writeBytes(
        ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(body.length).array());
    out.writeBytes(body);
    if (body.length % 2 == 1) {
      out.write(0);
    }
  }
}
