package charline.log.sheet;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What cells of a kind mean, worked out once for each text of a column, as the lines of a sheet
 * repeat most of what others say.
 */
final class CellMeanings<T> {
  /** More than the settings that anybody dials in; a column of other texts is begun anew. */
  private static final int MOST = 4096;

  private final Map<Column, Map<String, T>> known = new EnumMap<>(Column.class);

  /**
   * What a cell means.
   *
   * @param meaning works it out from the text; what it refuses is not kept
   */
  T of(Column column, String text, Function<String, T> meaning) {
    Map<String, T> ofColumn = known.computeIfAbsent(column, c -> new HashMap<>());
    T found = ofColumn.get(text);
    if (found == null) {
      found = meaning.apply(text);
      if (ofColumn.size() == MOST) {
        ofColumn.clear();
      }
      ofColumn.put(text, found);
    }
    return found;
  }
}
