package charline.web.pages;

import charline.log.Filter;
import charline.log.Logbook;
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
   * The filter together with that of the question.
   *
   * @throws Refusal naming what the log does not know
   */
  Filter with(Filter asked, Logbook log, Clock clock) {
    Set<Mark> marks = EnumSet.noneOf(Mark.class);
    marks.addAll(asked.marks());
    all("outcome").forEach(text -> marks.addAll(Outcome.parse(text).marks()));
    Set<String> woods = new LinkedHashSet<>(asked.woods());
    all("wood").forEach(w -> woods.addAll(log.reference().kindsOf(log.reference().wood(w))));
    return new Filter(
        both(asked.families(), "family", log.reference()::family),
        woods,
        marks,
        latest(asked.since(), day("since", clock, 0)),
        earliest(asked.until(), day("until", clock, 1)),
        both(asked.rigs(), "rig", name -> log.rig(name).name()),
        both(asked.boards(), "board", name -> log.board(name).name()),
        both(asked.finishes(), "finish", name -> log.finish(name).name()),
        both(asked.people(), "by", UnaryOperator.identity()),
        both(asked.jobs(), "job", UnaryOperator.identity()));
  }

  private List<String> all(String name) {
    return values.getOrDefault(name, List.of());
  }

  private Set<String> both(Set<String> asked, String name, UnaryOperator<String> known) {
    Set<String> both = new LinkedHashSet<>(asked);
    all(name).forEach(value -> both.add(known.apply(value)));
    return both;
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

  private static Optional<OffsetDateTime> latest(
      Optional<OffsetDateTime> a, Optional<OffsetDateTime> b) {
    return a.isPresent() && b.isPresent() && a.get().isAfter(b.get()) ? a : b.or(() -> a);
  }

  private static Optional<OffsetDateTime> earliest(
      Optional<OffsetDateTime> a, Optional<OffsetDateTime> b) {
    return a.isPresent() && b.isPresent() && a.get().isBefore(b.get()) ? a : b.or(() -> a);
  }
}
