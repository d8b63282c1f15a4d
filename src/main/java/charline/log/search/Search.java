package charline.log.search;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.database.Where;
import charline.log.search.Condition.All;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Coats;
import charline.log.search.Condition.Either;
import charline.log.search.Condition.Has;
import charline.log.search.Condition.Judged;
import charline.log.search.Condition.Measured;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Not;
import charline.log.search.Condition.Noted;
import charline.log.search.Condition.Seen;
import charline.log.search.Condition.Underneath;
import charline.log.search.Condition.Which;
import charline.trial.Coat;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/** The patches of a log that meet a condition. */
public final class Search {
  private static final Map<Feature, String> IN_THE_LOG =
      Map.of(
          Feature.VOID, ConditionSql.VOID,
          Feature.PHOTO, ConditionSql.PHOTO,
          Feature.PLANNED, ConditionSql.PLANNED);

  private final Map<Feature, Set<UUID>> having = new EnumMap<>(Feature.class);

  private Search() {}

  /** Oldest first. Void ones are left out, unless the condition asks about them. */
  public static List<PatchEntry> patches(Logbook log, Condition condition) {
    return log.database().inSnapshot(() -> new Search().found(log, condition));
  }

  /**
   * Those among some patches of a log; void ones only if the condition asks about them.
   *
   * @param entries read from the log before, all of them or some
   */
  public static List<PatchEntry> among(List<PatchEntry> entries, Logbook log, Condition condition) {
    boolean asksForVoid = condition.leaves().anyMatch(new Has(Feature.VOID)::equals);
    Condition counting = asksForVoid ? condition : condition.and(new Not(new Has(Feature.VOID)));
    Search search = new Search();
    search.read(log, counting);
    return entries.stream().filter(entry -> search.meets(entry, counting)).toList();
  }

  private List<PatchEntry> found(Logbook log, Condition condition) {
    read(log, condition);
    Where where = ConditionSql.of(condition);
    return log.patches(where).stream().filter(entry -> meets(entry, condition)).toList();
  }

  /** What only the log tells, as far as the condition asks for it. */
  private void read(Logbook log, Condition condition) {
    IN_THE_LOG.forEach(
        (feature, sql) -> {
          if (condition.leaves().anyMatch(new Has(feature)::equals)) {
            having.put(
                feature,
                new HashSet<>(
                    log.database()
                        .query("SELECT p.id FROM patch p WHERE " + sql, row -> row.id("id"))));
          }
        });
  }

  private boolean meets(PatchEntry entry, Condition condition) {
    if (condition instanceof All all) {
      return all.parts().stream().allMatch(part -> meets(entry, part));
    }
    if (condition instanceof Either any) {
      return any.parts().stream().anyMatch(part -> meets(entry, part));
    }
    if (condition instanceof Not not) {
      return !meets(entry, not.part());
    }
    if (condition instanceof Has has) {
      Set<UUID> ids = having.get(has.feature());
      return ids == null ? has.feature().of(entry) : ids.contains(entry.patch().id());
    }
    return leaf(entry, condition);
  }

  private static boolean leaf(PatchEntry entry, Condition condition) {
    if (condition instanceof Named named) {
      return named
          .attribute()
          .of(entry)
          .anyMatch(word -> named.values().stream().anyMatch(word::equalsIgnoreCase));
    }
    if (condition instanceof Seen seen) {
      return isSeen(seen, entry.patch().readings());
    }
    if (condition instanceof Burned burned) {
      return isWithin(entry.patch().burnedAt(), burned.since(), burned.until());
    }
    if (condition instanceof Judged judged) {
      return entry.patch().readings().stream()
          .anyMatch(r -> isWithin(r.at(), judged.since(), judged.until()));
    }
    if (condition instanceof Measured measured) {
      OptionalDouble value = measured.amount().of(entry.patch());
      return value.isPresent() && measured.range().has(value.getAsDouble());
    }
    if (condition instanceof Coats coats) {
      return isStack(coats, families(entry));
    }
    if (condition instanceof Underneath under) {
      return families(entry).stream().skip(1).anyMatch(under.families()::contains);
    }
    if (condition instanceof Noted noted) {
      return notes(entry).anyMatch(note -> Vocabulary.hasWords(note, noted.text()));
    }
    throw new IllegalArgumentException("no test of " + condition);
  }

  /** Outermost first; of a finish whose coats nobody noted, its family alone. */
  private static List<String> families(PatchEntry entry) {
    List<String> coats = entry.patch().finish().coats().stream().map(Coat::family).toList();
    return coats.isEmpty() ? List.of(entry.patch().finish().family()) : coats;
  }

  private static boolean isStack(Coats wanted, List<String> coats) {
    List<Set<String>> steps = wanted.families();
    int last = coats.size() - 1;
    if (wanted.bottom() && !steps.get(steps.size() - 1).contains(coats.get(last))) {
      return false;
    }
    if (wanted.top() && !steps.get(0).contains(coats.get(0))) {
      return false;
    }
    int step = 0;
    for (String coat : coats) {
      if (step < steps.size() && steps.get(step).contains(coat)) {
        step++;
      }
    }
    return step == steps.size();
  }

  private static boolean isSeen(Seen seen, List<Reading> readings) {
    Stream<Reading> looked =
        seen.which() == Which.LAST
            ? Stream.of(readings.get(readings.size() - 1))
            : readings.stream();
    Stream<Reading> showing = looked.filter(r -> seen.marks().shownBy(r.outcome().marks()));
    return (seen.which() == Which.FIRST ? showing.limit(1) : showing)
        .anyMatch(r -> seen.passes().has(r.passes()));
  }

  private static boolean isWithin(
      OffsetDateTime at, Optional<OffsetDateTime> since, Optional<OffsetDateTime> until) {
    return since.filter(at::isBefore).isEmpty() && until.filter(end -> !at.isBefore(end)).isEmpty();
  }

  private static Stream<String> notes(PatchEntry entry) {
    return Stream.concat(
        entry.note().stream(),
        entry.patch().readings().stream().map(Reading::note).flatMap(Optional::stream));
  }
}
