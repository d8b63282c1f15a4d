package charline.cli.ask;

import charline.cli.command.CommandContext;
import charline.cli.command.TypedTime;
import charline.log.Filter;
import charline.log.Logbook;
import charline.trial.Mark;
import charline.trial.Outcome;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.EnumSet;
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
      description = "Burned on or after: 2026-06-01, yesterday, \"1 june\" or \"last month\".")
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

  /** The filter that the options and the words of a question make together. */
  public Filter with(Filter asked, Logbook log, CommandContext desk) {
    Set<Mark> marks = EnumSet.noneOf(Mark.class);
    marks.addAll(asked.marks());
    outcomes.forEach(text -> marks.addAll(Outcome.parse(text).marks()));
    return new Filter(
        both(asked.families(), families, log.reference()::family),
        kinds(asked.woods(), woods, log),
        marks,
        latest(asked.since(), since == null ? Optional.empty() : start(desk, since(desk))),
        earliest(asked.until(), until == null ? Optional.empty() : start(desk, until(desk))),
        both(asked.rigs(), rigs, name -> log.rig(name).name()),
        both(asked.boards(), boards, name -> log.board(name).name()),
        both(asked.finishes(), finishes, name -> log.finish(name).name()),
        both(asked.people(), people, String::strip),
        both(asked.jobs(), jobs, String::strip));
  }

  /** A generic wood includes its species, as in a question. */
  private static Set<String> kinds(Set<String> asked, List<String> typed, Logbook log) {
    Set<String> all = new LinkedHashSet<>(asked);
    typed.forEach(word -> all.addAll(log.reference().kindsOf(log.reference().wood(word))));
    return all;
  }

  private static Set<String> both(
      Set<String> asked, List<String> typed, UnaryOperator<String> known) {
    Set<String> all = new LinkedHashSet<>(asked);
    typed.forEach(word -> all.add(known.apply(word)));
    return all;
  }

  private LocalDate since(CommandContext desk) {
    return TypedTime.days("--since", since, desk.now()).first();
  }

  private LocalDate until(CommandContext desk) {
    return TypedTime.days("--until", until, desk.now()).last().plusDays(1);
  }

  private static Optional<OffsetDateTime> start(CommandContext desk, LocalDate day) {
    return Optional.of(day.atStartOfDay(desk.clock().getZone()).toOffsetDateTime());
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
