package charline.log.sheet;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;

/**
 * The lines of each patch, patches in the order of their first lines. Lines are read as they are
 * asked for; only patches whose lines are far apart keep others waiting in memory.
 */
final class PatchGroups implements Iterator<List<SheetRow>> {
  /** Lines of a patch, and whether all of them are there. */
  private static final class Group {
    private final List<SheetRow> rows = new ArrayList<>(1);
    private boolean whole;
  }

  private final Iterator<SheetRow> rows;
  private final PatchLines.Left lines;
  private final Map<String, Group> waiting = new LinkedHashMap<>();

  /**
   * @param lines all of them, which are taken off
   */
  PatchGroups(Iterator<SheetRow> rows, PatchLines.Left lines) {
    this.rows = rows;
    this.lines = lines;
  }

  @Override
  public boolean hasNext() {
    while (rows.hasNext() && !firstIsWhole()) {
      SheetRow row = rows.next();
      String key = PatchLines.key(row.text(Column.PATCH));
      Group group =
          waiting.computeIfAbsent(
              key.isEmpty() ? "line " + row.line() : "code " + key, k -> new Group());
      group.rows.add(row);
      group.whole = key.isEmpty() || lines.takeLast(key);
    }
    return !waiting.isEmpty();
  }

  private boolean firstIsWhole() {
    return !waiting.isEmpty() && waiting.values().iterator().next().whole;
  }

  @Override
  public List<SheetRow> next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    Iterator<Group> first = waiting.values().iterator();
    Group group = first.next();
    first.remove();
    return List.copyOf(group.rows);
  }
}
