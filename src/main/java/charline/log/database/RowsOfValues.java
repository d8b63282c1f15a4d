package charline.log.database;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows to be written by one statement.
 *
 * @param columns those that a row has a value for; in the others all rows have none
 * @param values of each row in turn, as the driver takes them
 */
record RowsOfValues(List<String> columns, int rows, Object[] values) {
  static RowsOfValues of(List<RowValues> rows) {
    List<String> all = rows.get(0).columns();
    List<Integer> used = new ArrayList<>();
    for (int c = 0; c < all.size(); c++) {
      int column = c;
      if (rows.stream().anyMatch(row -> row.values().get(column) != null)) {
        used.add(column);
      }
    }
    Object[] values = new Object[rows.size() * used.size()];
    int at = 0;
    for (RowValues row : rows) {
      for (int column : used) {
        values[at++] = row.values().get(column);
      }
    }
    return new RowsOfValues(used.stream().map(all::get).toList(), rows.size(), values);
  }
}
