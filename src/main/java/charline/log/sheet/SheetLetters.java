package charline.log.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The encoding of a sheet: as programs of other systems save them, and ours. */
final class SheetLetters {
  private static final Charset WINDOWS = Charset.forName("windows-1252");

  private SheetLetters() {}

  /** UTF-16 by its mark or its zero bytes, else UTF-8 where all of it fits, else Windows-1252. */
  static Charset of(Path file) throws IOException {
    int[] first = new int[4];
    try (InputStream in = Files.newInputStream(file)) {
      for (int i = 0; i < first.length; i++) {
        first[i] = in.read();
      }
    }
    boolean little = first[0] > 0 && first[1] == 0 && first[2] > 0 && first[3] == 0;
    boolean big = first[0] == 0 && first[1] > 0 && first[2] == 0 && first[3] > 0;
    if (first[0] == 0xFF && first[1] == 0xFE || little) {
      return StandardCharsets.UTF_16LE;
    }
    if (first[0] == 0xFE && first[1] == 0xFF || big) {
      return StandardCharsets.UTF_16BE;
    }
    return isUtf8(file) || isBinary(file) ? StandardCharsets.UTF_8 : WINDOWS;
  }

  private static boolean isUtf8(Path file) throws IOException {
    char[] some = new char[1 << 16];
    try (Reader reader =
        new InputStreamReader(
            Files.newInputStream(file),
            StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT))) {
      int read = 0;
      while (read >= 0) {
        read = reader.read(some);
      }
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static boolean isBinary(Path file) throws IOException {
    byte[] some = new byte[1 << 16];
    try (InputStream in = Files.newInputStream(file)) {
      for (int read = in.read(some); read >= 0; read = in.read(some)) {
        for (int i = 0; i < read; i++) {
          if (SheetText.isBinary((char) (some[i] & 0xFF))) {
            return true;
          }
        }
      }
    }
    return false;
  }
}
