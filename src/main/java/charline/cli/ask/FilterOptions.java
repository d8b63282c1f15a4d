package charline.cli.ask;

import charline.ask.Question;
import charline.ask.Ranking;
import charline.cli.command.CommandContext;
import charline.cli.command.TypedTime;
import charline.log.Logbook;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Marks;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Seen;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import charline.trial.Outcome;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import picocli.CommandLine.Option;

/** Which patches are wanted, as options. Each may be repeated: any of its values will do. */
public final class FilterOptions {
  @Option(names = "--family", paramLabel = "FAMILY", description = "Coating family, such as latex.")
  private List<String> families = List.of();

  @Option(names = "--wood", paramLabel = "WOOD", description = "Wood; pine includes its species.")
  private List<String> woods = List.of();

  @Option(
      names = "--outcome",
      paramLabel = "MARKS",
      description = "Marks that the last reading must have, such as clean or char+residue.")
  private List<String> outcomes = List.of();

  @Option(
      names = "--since",
      paramLabel = "DAY",
      description =
          "Burned on or after: 2026-06-01, yesterday, \"last tuesday\", \"1 june\" or \"last"
              + " month\".")
  private String since;

  @Option(names = "--until", paramLabel = "DAY", description = "Burned on or before this day.")
  private String until;

  @Option(names = "--rig", paramLabel = "NAME", description = "Name of the rig.")
  private List<String> rigs = List.of();

  @Option(names = "--board", paramLabel = "NAME", description = "Name of the board.")
  private List<String> boards = List.of();

  @Option(names = "--finish", paramLabel = "NAME", description = "Name of the finish.")
  private List<String> finishes = List.of();

  @Option(names = "--by", paramLabel = "WHO", description = "Who burned or judged it.")
  private List<String> people = List.of();

  @Option(names = "--job", paramLabel = "TEXT", description = "Job that the board belongs to.")
  private List<String> jobs = List.of();

  @Option(
      names = "--limit",
      paramLabel = "N",
      description = "So many at most: the newest, or the first in the order that --sort asks for.")
  private Integer limit;

  @Option(
      names = "--sort",
      paramLabel = "BY",
      description =
          "Order: newest, oldest, or an amount such as dose or power, highest first with"
              + " \"dose desc\".")
  private String sort;

  /** What the words of a question and the options ask for together. */
  public Question with(List<String> words, Logbook log, CommandContext desk) {
    Question asked = words.isEmpty() ? Question.EVERYTHING : asked(words, log, desk);
    Question narrowed = asked.narrowed(condition(log, desk));
    if (sort == null && limit == null) {
      return narrowed;
    }
    if (limit != null && limit < 1) {
      throw Refusal.usage("--limit must be 1 or more, not %d.".formatted(limit));
    }
    Ranking ranking =
        sort == null ? narrowed.ranking().orElse(Ranking.byTime(true, 0)) : order(log, desk);
    return narrowed.ranked(limit == null ? ranking : ranking.limitedTo(limit));
  }

  /** What words ask for, at this desk. */
  public static Question asked(List<String> words, Logbook log, CommandContext desk) {
    return Question.parse(words, Vocabulary.of(log), Optional.of(desk.person(null)), desk.clock());
  }

  private Ranking order(Logbook log, CommandContext desk) {
    String by = sort.strip();
    List<String> phrase =
        switch (by) {
          case "newest", "latest" -> List.of("newest first");
          case "oldest", "date", "time" -> List.of("oldest first");
          default -> List.of("sorted by " + by);
        };
    return asked(phrase, log, desk)
        .ranking()
        .orElseThrow(
            () ->
                Refusal.usage(
                    "--sort must be newest, oldest or an amount such as dose, power, speed or depth, not \"%s\"."
                        .formatted(sort)));
  }

  private Condition condition(Logbook log, CommandContext desk) {
    List<Condition> all = new ArrayList<>();
    named(all, Attribute.FAMILY, families, log.reference()::family);
    if (!woods.isEmpty()) {
      Set<String> kinds = new LinkedHashSet<>();
      woods.forEach(w -> kinds.addAll(log.reference().kindsOf(log.reference().wood(w))));
      all.add(new Named(Attribute.WOOD, kinds, said(kinds)));
    }
    if (!outcomes.isEmpty()) {
      all.add(
          Condition.either(
              outcomes.stream()
                  .map(
                      text ->
                          (Condition) Seen.last(new Marks(Outcome.parse(text).marks(), Set.of())))
                  .toList()));
    }
    if (since != null || until != null) {
      all.add(new Burned(start(desk, since(desk)), start(desk, until(desk))));
    }
    named(all, Attribute.RIG, rigs, name -> log.rig(name).name());
    named(all, Attribute.BOARD, boards, name -> log.board(name).name());
    named(all, Attribute.FINISH, finishes, name -> log.finish(name).name());
    named(all, Attribute.PERSON, people, String::strip);
    named(all, Attribute.JOB, jobs, String::strip);
    return all.isEmpty() ? Condition.EVERY : Condition.all(all);
  }

  private String said(Set<String> kinds) {
    String typed = String.join(" or ", woods);
    return kinds.size() > woods.size() ? typed + " or one of its species" : typed;
  }

  private static void named(
      List<Condition> all, Attribute attribute, List<String> typed, UnaryOperator<String> known) {
    if (!typed.isEmpty()) {
      Set<String> values = new LinkedHashSet<>();
      typed.forEach(word -> values.add(known.apply(word)));
      all.add(new Named(attribute, values, String.join(" or ", values)));
    }
  }

  private Optional<LocalDate> since(CommandContext desk) {
    return Optional.ofNullable(since)
        .map(text -> TypedTime.days("--since", text, desk.now()).first());
  }

  private Optional<LocalDate> until(CommandContext desk) {
    return Optional.ofNullable(until)
        .map(text -> TypedTime.days("--until", text, desk.now()).last().plusDays(1));
  }

  private static Optional<OffsetDateTime> start(CommandContext desk, Optional<LocalDate> day) {
    return day.map(d -> d.atStartOfDay(desk.clock().getZone()).toOffsetDateTime());
  }
}
