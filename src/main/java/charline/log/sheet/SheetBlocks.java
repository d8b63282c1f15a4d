package charline.log.sheet;

import charline.refusal.Refusal;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.Optional;

/**
 * A sheet in blocks of whole records, read one after the other, as a large sheet has more of them
 * than fit into memory.
 */
final class SheetBlocks implements AutoCloseable {
  private static final int READ_CHARACTERS = 1 << 16;

  private final SheetSource source;
  private final int blockCharacters;
  private final Reader reader;
  private final char[] read = new char[READ_CHARACTERS];
  private final StringBuilder waiting = new StringBuilder();
  private char separator;
  private int line = 1;
  private boolean begun;
  private boolean afterReturn;
  private boolean over;

  /**
   * @param blockCharacters about how long a block is
   */
  SheetBlocks(SheetSource source, int blockCharacters) {
    this.source = source;
    this.blockCharacters = blockCharacters;
    reader = source.open();
  }

  /**
   * The next block, none after the last; the first begins with the headings.
   *
   * @throws Refusal if the sheet is empty or no plain text, or a record has no end
   */
  Optional<SheetText> next() {
    while (!over || !waiting.isEmpty()) {
      fill();
      String body = waiting.toString();
      if (separator == 0) {
        if (body.isBlank()) {
          throw Refusal.data(
              source.name()
                  + " is empty; its first line must name the columns, such as patch,rig,board.");
        }
        separator = SheetText.separatorOf(body.stripLeading().lines().findFirst().orElseThrow());
      }
      SheetText.Cut cut = SheetText.cut(source.name(), body, separator, line, over);
      waiting.setLength(0);
      waiting.append(body, cut.end(), body.length());
      line = cut.nextLine();
      if (!cut.records().isEmpty()) {
        return Optional.of(
            new SheetText(source.name(), separator, body.substring(0, cut.end()), cut.records()));
      }
    }
    return Optional.empty();
  }

  /** Whether the last block has been given. */
  boolean isOver() {
    return over && waiting.toString().isBlank();
  }

  private void fill() {
    try {
      // The first block must have a line to find the separator in.
      while (!over && (waiting.length() < blockCharacters || separator == 0 && isBlank(waiting))) {
        int count = reader.read(read);
        if (count < 0) {
          over = true;
        } else {
          take(count);
        }
      }
    } catch (CharacterCodingException e) {
      throw source.otherLetters(e);
    } catch (IOException e) {
      throw source.unreadable(e);
    }
  }

  private static boolean isBlank(StringBuilder text) {
    if (text.length() > SheetText.LONGEST_RECORD) {
      return false; // nothing but blank lines so far: the record that follows says so
    }
    return text.chars().allMatch(Character::isWhitespace);
  }

  /** Makes every line end LF, and drops a byte order mark. */
  private void take(int count) {
    for (int i = 0; i < count; i++) {
      char c = read[i];
      if (SheetText.isBinary(c)) {
        throw SheetText.binary(source.name());
      }
      boolean mark = !begun && c == '\uFEFF';
      begun = true;
      if (!mark && !(c == '\n' && afterReturn)) {
        waiting.append(c == '\r' ? '\n' : c);
      }
      afterReturn = c == '\r';
    }
  }

  @Override
  public void close() {
    try {
      reader.close();
    } catch (IOException e) {
      throw source.unreadable(e);
    }
  }
}
