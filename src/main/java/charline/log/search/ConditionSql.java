package charline.log.search;

import charline.log.Filter;
import charline.log.database.Timestamps;
import charline.log.database.Where;
import charline.log.search.Condition.All;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Coats;
import charline.log.search.Condition.Either;
import charline.log.search.Condition.Has;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Not;
import charline.log.search.Condition.Underneath;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A condition as SQL on {@code patch p}, which lets every patch through that meets it, and others
 * too where only what is computed can tell, such as the dose. SQLite goes by the indexes of the
 * boards, finishes and rigs that are named.
 */
final class ConditionSql {
  /** What SQL cannot tell. */
  private static final String MAYBE = "1";

  static final String VOID =
      "(p.voided_why IS NOT NULL OR EXISTS (SELECT 1 FROM board v WHERE v.id = p.board_id AND"
          + " v.voided_why IS NOT NULL))";
  static final String PHOTO = "EXISTS (SELECT 1 FROM photo h WHERE h.patch_id = p.id)";
  static final String PLANNED = "EXISTS (SELECT 1 FROM planned_patch n WHERE n.patch_id = p.id)";

  private final List<Object> values = new ArrayList<>();

  private ConditionSql() {}

  static Where of(Condition condition) {
    ConditionSql sql = new ConditionSql();
    boolean asksForVoid = condition.leaves().anyMatch(new Has(Feature.VOID)::equals);
    String base = asksForVoid ? MAYBE : Filter.COUNTING;
    return new Where(base + " AND " + sql.text(condition, true), sql.values.toArray());
  }

  /** Of a condition, or where it is not wanted, of its contrary. */
  private String text(Condition condition, boolean wanted) {
    if (condition instanceof Not not) {
      return text(not.part(), !wanted);
    }
    if (condition instanceof All all) {
      return joined(all.parts(), wanted, wanted);
    }
    if (condition instanceof Either any) {
      return joined(any.parts(), wanted, !wanted);
    }
    return leaf(condition).map(sql -> wanted ? sql : "NOT (" + sql + ")").orElse(MAYBE);
  }

  private String joined(List<Condition> parts, boolean wanted, boolean all) {
    if (parts.isEmpty()) {
      return all ? "1" : "0";
    }
    return parts.stream()
        .map(part -> text(part, wanted))
        .collect(Collectors.joining(all ? " AND " : " OR ", "(", ")"));
  }

  /** Never null for any patch, so that its contrary can be asked too. */
  private Optional<String> leaf(Condition condition) {
    if (condition instanceof Named named) {
      return named(named);
    }
    if (condition instanceof Burned burned) {
      return Optional.of(burned(burned.since(), burned.until()));
    }
    if (condition instanceof Coats coats && coats.families().size() == 1 && !coats.top()) {
      return Optional.of(
              "p.finish_id IN (SELECT id FROM finish WHERE family IN %1$s UNION SELECT finish_id FROM coat WHERE family IN %1$s)"
                  .formatted(list(coats.families().get(0))))
          .filter(sql -> !coats.bottom());
    }
    if (condition instanceof Underneath under) {
      return Optional.of(
          "p.finish_id IN (SELECT finish_id FROM coat WHERE position > 1 AND family IN %s)"
              .formatted(list(under.families())));
    }
    if (condition instanceof Has has) {
      return switch (has.feature()) {
        case VOID -> Optional.of(VOID);
        case PHOTO -> Optional.of(PHOTO);
        case PLANNED -> Optional.of(PLANNED);
        default -> Optional.empty();
      };
    }
    return Optional.empty();
  }

  private Optional<String> named(Named named) {
    String rule =
        switch (named.attribute()) {
          case FAMILY -> "p.finish_id IN (SELECT id FROM finish WHERE family IN %s)";
          case WOOD -> "p.board_id IN (SELECT id FROM board WHERE wood IN %s)";
          case RIG -> "p.rig_id IN (SELECT id FROM rig WHERE name IN %s)";
          case BOARD -> "p.board_id IN (SELECT id FROM board WHERE name IN %s)";
          case FINISH -> "p.finish_id IN (SELECT id FROM finish WHERE name IN %s)";
          case LIGHT -> "p.rig_id IN (SELECT id FROM rig WHERE emission IN %s)";
          case FORM -> "p.board_id IN (SELECT id FROM board WHERE form IN %s)";
          default -> null; // other alphabets' capitals, or too seldom asked for
        };
    return Optional.ofNullable(rule).map(r -> r.formatted(list(named.values())));
  }

  private String burned(Optional<OffsetDateTime> since, Optional<OffsetDateTime> until) {
    List<String> rules = new ArrayList<>();
    since.ifPresent(at -> rules.add("p.burned_at_utc >= " + place(Timestamps.bound(at))));
    until.ifPresent(at -> rules.add("p.burned_at_utc < " + place(Timestamps.bound(at))));
    return rules.isEmpty() ? "1" : "(" + String.join(" AND ", rules) + ")";
  }

  private String list(Set<String> words) {
    return "(SELECT value FROM json_each(%s))".formatted(place(json(words)));
  }

  private String place(Object value) {
    values.add(value);
    return "?" + values.size();
  }

  private static String json(Collection<String> words) {
    try {
      return JSON.std.asString(words);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // text to text: nothing outside can fail
    }
  }
}
