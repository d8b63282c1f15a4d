package charline.log.sheet;

import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;

/** The lines of a large sheet, one block of it in memory. */
final class BlockRows implements Iterator<SheetRow>, AutoCloseable {
  private final SheetBlocks blocks;
  private final Headings head;
  private Optional<TextTable> block;
  private int at;

  BlockRows(SheetBlocks blocks, Headings head) {
    this.blocks = blocks;
    this.head = head;
    block = read();
  }

  private Optional<TextTable> read() {
    at = 0;
    return blocks.next().map(text -> TextTable.ofBlock(text, head));
  }

  @Override
  public boolean hasNext() {
    while (block.isPresent() && at >= block.get().rowCount()) {
      block = read();
    }
    return block.isPresent();
  }

  @Override
  public SheetRow next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    return block.orElseThrow().row(at++);
  }

  @Override
  public void close() {
    blocks.close();
  }
}
