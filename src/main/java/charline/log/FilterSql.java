package charline.log;

import charline.log.database.Timestamps;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * The patches that match a filter, as a condition on {@code patch p} that asks only for what was
 * given, so that SQLite goes by the indexes of the boards, finishes and rigs that are named.
 */
final class FilterSql {
  private final StringBuilder condition =
      new StringBuilder(
          "p.voided_why IS NULL AND NOT EXISTS (SELECT 1 FROM board v WHERE v.id = p.board_id AND"
              + " v.voided_why IS NOT NULL)");
  private final List<Object> values = new ArrayList<>();

  private FilterSql() {}

  static FilterSql by(Filter filter) {
    FilterSql sql = new FilterSql();
    sql.any(filter.families(), "p.finish_id IN (SELECT id FROM finish WHERE family IN %s)");
    sql.any(filter.woods(), "p.board_id IN (SELECT id FROM board WHERE wood IN %s)");
    sql.any(filter.rigs(), "p.rig_id IN (SELECT id FROM rig WHERE name IN %s)");
    sql.any(filter.boards(), "p.board_id IN (SELECT id FROM board WHERE name IN %s)");
    sql.any(filter.finishes(), "p.finish_id IN (SELECT id FROM finish WHERE name IN %s)");
    sql.any(filter.jobs(), "p.board_id IN (SELECT id FROM board WHERE job COLLATE NOCASE IN %s)");
    sql.any(
        filter.people(),
        """
        (p.burned_by COLLATE NOCASE IN %1$s
          OR EXISTS (SELECT 1 FROM reading r WHERE r.patch_id = p.id AND r.voided_why IS NULL
            AND r.judged_by COLLATE NOCASE IN %1$s))\
        """);
    filter.since().ifPresent(at -> sql.given("p.burned_at_utc >= %s", Timestamps.bound(at)));
    filter.until().ifPresent(at -> sql.given("p.burned_at_utc < %s", Timestamps.bound(at)));
    return sql;
  }

  String condition() {
    return condition.toString();
  }

  /** Values of ?1, ?2, ... in the condition. */
  Object[] values() {
    return values.toArray();
  }

  private void any(Collection<String> words, String rule) {
    if (!words.isEmpty()) {
      given(rule.replace("%s", "%1$s").formatted("(SELECT value FROM json_each(?N))"), json(words));
    }
  }

  private void given(String rule, Object value) {
    values.add(value);
    String place = "?" + values.size();
    condition.append(" AND ").append(rule.replace("?N", place).replace("%s", place));
  }

  private static String json(Collection<String> words) {
    try {
      return JSON.std.asString(words);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // text to text: nothing outside can fail
    }
  }
}
