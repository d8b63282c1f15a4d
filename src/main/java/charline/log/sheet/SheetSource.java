package charline.log.sheet;

import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.CodingErrorAction;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Where a sheet comes from: a file in UTF-8, UTF-16 or Windows-1252, or a text. It can be read more
 * than once.
 */
final class SheetSource {
  /** Opens what a sheet is read from. */
  @FunctionalInterface
  private interface Opening {
    Reader open() throws IOException;
  }

  private final String name;
  private final Opening opening;
  private final Path file;

  private SheetSource(String name, Path file, Opening opening) {
    this.name = name;
    this.file = file;
    this.opening = opening;
  }

  /**
   * @throws Refusal if it is a folder, a device or a pipe
   */
  static SheetSource of(Path file) {
    String name = String.valueOf(file.getFileName());
    if (Files.isDirectory(file)) {
      throw Refusal.usage(name + " is a folder; give a CSV file.");
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw Refusal.usage(
          file + " is a device or a pipe, not a file; save it as a CSV file first.");
    }
    return new SheetSource(
        name,
        file,
        () ->
            new InputStreamReader(
                Files.newInputStream(file),
                SheetLetters.of(file)
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)));
  }

  static SheetSource of(String name, String text) {
    return new SheetSource(name, null, () -> new StringReader(text));
  }

  /** Name of the sheet in messages. */
  String name() {
    return name;
  }

  Reader open() {
    try {
      return opening.open();
    } catch (IOException e) {
      throw unreadable(e);
    }
  }

  /** What a failure to read it means for a person. */
  Refusal unreadable(IOException e) {
    return e instanceof NoSuchFileException
        ? Refusal.usage("There is no file %s; check its name and folder.".formatted(file), e)
        : Refusal.data(
            "%s cannot be read (%s); check its permissions.".formatted(file, e.getMessage()), e);
  }

  /** What bytes that are no UTF-8 mean: another encoding, or no text at all. */
  Refusal otherLetters(IOException cause) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = new byte[1 << 16];
      for (int read = in.read(bytes); read >= 0; read = in.read(bytes)) {
        for (int i = 0; i < read; i++) {
          if (SheetText.isBinary((char) (bytes[i] & 0xFF))) {
            return SheetText.binary(name);
          }
        }
      }
    } catch (IOException e) {
      return unreadable(e);
    }
    return Refusal.data(name + " is not UTF-8 text; save it as CSV in UTF-8.", cause);
  }
}
