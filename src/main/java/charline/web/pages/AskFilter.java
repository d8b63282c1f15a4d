package charline.web.pages;

import charline.log.Logbook;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Marks;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Seen;
import charline.refusal.Refusal;
import charline.trial.Mark;
import charline.trial.Outcome;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * Which patches an address asks for beside the question: every filter by its name, each with any
 * number of values, of which any will do.
 */
final class AskFilter {
  static final List<String> NAMES =
      List.of("family", "wood", "outcome", "since", "until", "rig", "board", "finish", "by", "job");

  private static final int LONGEST = 120;

  private final Map<String, List<String>> values = new LinkedHashMap<>();

  AskFilter(Context ctx) {
    for (String name : NAMES) {
      List<String> given =
          ctx.queryParams(name).stream()
              .map(String::strip)
              .filter(text -> !text.isEmpty() && text.length() <= LONGEST)
              .distinct()
              .toList();
      if (!given.isEmpty()) {
        values.put(name, given);
      }
    }
  }

  private AskFilter(Map<String, List<String>> others) {
    values.putAll(others);
  }

  Map<String, List<String>> values() {
    return values;
  }

  /** The same without one value. */
  AskFilter without(String name, String value) {
    Map<String, List<String>> others = new LinkedHashMap<>(values);
    List<String> left = new ArrayList<>(others.getOrDefault(name, List.of()));
    left.remove(value);
    if (left.isEmpty()) {
      others.remove(name);
    } else {
      others.put(name, left);
    }
    return new AskFilter(others);
  }

  /** As a part of an address, beginning with an ampersand where there is one. */
  String query() {
    StringBuilder query = new StringBuilder();
    values.forEach(
        (name, all) ->
            all.forEach(
                value -> query.append('&').append(name).append('=').append(Links.escaped(value))));
    return query.toString();
  }

  /**
   * What the filters ask for together.
   *
   * @throws Refusal naming what the log does not know
   */
  Condition condition(Logbook log, Clock clock) {
    List<Condition> all = new ArrayList<>();
    named(all, Attribute.FAMILY, "family", log.reference()::family);
    if (!all("wood").isEmpty()) {
      Set<String> kinds = new LinkedHashSet<>();
      all("wood").forEach(w -> kinds.addAll(log.reference().kindsOf(log.reference().wood(w))));
      all.add(new Named(Attribute.WOOD, kinds, String.join(" or ", all("wood"))));
    }
    if (!all("outcome").isEmpty()) {
      Set<Mark> marks = EnumSet.noneOf(Mark.class);
      all("outcome").forEach(text -> marks.addAll(Outcome.parse(text).marks()));
      all.add(Seen.last(new Marks(marks, Set.of())));
    }
    if (!all("since").isEmpty() || !all("until").isEmpty()) {
      all.add(new Burned(day("since", clock, 0), day("until", clock, 1)));
    }
    named(all, Attribute.RIG, "rig", name -> log.rig(name).name());
    named(all, Attribute.BOARD, "board", name -> log.board(name).name());
    named(all, Attribute.FINISH, "finish", name -> log.finish(name).name());
    named(all, Attribute.PERSON, "by", UnaryOperator.identity());
    named(all, Attribute.JOB, "job", UnaryOperator.identity());
    return all.isEmpty() ? Condition.EVERY : Condition.all(all);
  }

  private void named(
      List<Condition> all, Attribute attribute, String name, UnaryOperator<String> known) {
    if (!all(name).isEmpty()) {
      Set<String> values = new LinkedHashSet<>();
      all(name).forEach(value -> values.add(known.apply(value)));
      all.add(new Named(attribute, values, String.join(" or ", values)));
    }
  }

  private List<String> all(String name) {
    return values.getOrDefault(name, List.of());
  }

  private Optional<OffsetDateTime> day(String name, Clock clock, int later) {
    return all(name).stream()
        .findFirst()
        .map(
            text -> {
              try {
                return LocalDate.parse(text)
                    .plusDays(later)
                    .atStartOfDay(clock.getZone())
                    .toOffsetDateTime();
              } catch (DateTimeParseException e) {
                throw Refusal.usage(
                    "A day must read like 2026-05-04, not \"%s\".".formatted(text), e);
              }
            });
  }
}
