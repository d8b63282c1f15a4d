package charline.web.pages;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A text as a QR code (ISO/IEC 18004).
 *
 * @param size of the drawing in modules, the quiet zone of four around it included
 * @param path outline of the dark modules
 */
public record ScanCode(int size, String path) {
  private static final int QUIET = 4;

  /** The code of a text. */
  static ScanCode of(String text) {
    ByteMatrix modules;
    try {
      modules = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
    } catch (WriterException e) {
      throw new IllegalStateException("An address is too long for a code to scan: " + text, e);
    }
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < modules.getHeight(); y++) {
      for (int x = 0; x < modules.getWidth(); x++) {
        if (modules.get(x, y) == 1) {
          path.append('M').append(x + QUIET).append(' ').append(y + QUIET).append("h1v1h-1z");
        }
      }
    }
    return new ScanCode(modules.getWidth() + 2 * QUIET, path.toString());
  }
}
