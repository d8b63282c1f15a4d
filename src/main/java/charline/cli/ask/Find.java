package charline.cli.ask;

import charline.answer.Answers;
import charline.answer.Coverage;
import charline.ask.Question;
import charline.ask.Question.Purpose;
import charline.ask.WiderQuestion;
import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.cli.render.PatchView;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Condition.Seen;
import charline.log.search.Search;
import charline.trial.Mark;
import charline.trial.Stratum;
import charline.wording.Json;
import charline.wording.QuestionText;
import charline.wording.Table;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code find}. */
@Command(
    addMethodSubcommands = false,
    name = "find",
    header = "Look up patches in plain words.",
    description =
        "Ask as you speak: coatings, woods, outcomes, numbers with units, times, names of rigs,"
            + " boards, finishes, people and jobs, and whatever else is noted of a patch, joined by"
            + " and, or and not. The first lines repeat how the question was read. If you ask for"
            + " clean patches, the settings that worked are counted. Speeds are in mm/s, doses in"
            + " J/cm2 per pass.",
    footer = {
      "",
      "Examples:",
      "  charline find clean latex over pine last month",
      "  charline find what never cleared on oak or ash this week",
      "  charline find lowest dose that cleared varnish over stain",
      "  charline find my last 5 patches slower than 20 mm/s without char",
      "  charline find char --wood oak --since \"last tuesday\" --csv"
    })
public final class Find extends LogCommand {
  @Parameters(paramLabel = "WORDS", arity = "0..*", description = "The question.")
  private List<String> words = List.of();

  @Option(
      names = "--with-window",
      description =
          "Say of every setting that came out clean whether the window now covers it; takes some"
              + " seconds for each coating, wood and rig.")
  private boolean withWindow;

  @Mixin private FilterOptions options;
  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      Question question = options.with(words, log, desk);
      List<PatchEntry> found = question.patches(log);
      if (found.isEmpty()) {
        Optional<Question> wider = WiderQuestion.of(question);
        List<PatchEntry> more = wider.map(q -> q.patches(log)).orElse(List.of());
        if (more.isEmpty()) {
          return nothing(log, question);
        }
        question = wider.get();
        found = more;
      }
      answer(log, question, found);
    }
    return DONE;
  }

  private int nothing(Logbook log, Question question) {
    String sentence = FindReport.nothing(question, log.patches(Filter.ALL), log.hasPatches());
    (reply.forPerson() ? desk.out() : desk.err()).print(sentence);
    if (!reply.forPerson()) {
      reply.print(desk.out(), List::of, () -> "");
    }
    return NO;
  }

  private void answer(Logbook log, Question question, List<PatchEntry> found) {
    if (!reply.forPerson() && !words.isEmpty()) {
      desk.err().println(QuestionText.sentences(question));
    }
    boolean settings =
        question.purpose() == Purpose.BEST
            || question
                .condition()
                .leaves()
                .anyMatch(c -> c instanceof Seen seen && seen.marks().with().contains(Mark.CLEAN));
    List<PatchEntry> tried =
        reply.forPerson() && settings
            ? Search.patches(log, WiderQuestion.whateverWasSeen(question.condition()))
            : List.of();
    reply.print(
        desk.out(),
        () -> rows(found),
        () ->
            FindReport.text(question, found, desk.clock().getZone())
                + (settings
                    ? "\n" + CleanSettings.text(found, tried, windows(log, question, found))
                    : "")
                + best(question, found));
  }

  /** Windows where they were asked for, and where the best of one coating, wood and rig was. */
  private Optional<Coverage> windows(Logbook log, Question question, List<PatchEntry> found) {
    boolean one =
        found.stream()
                .map(e -> List.of(Stratum.of(e.patch()), e.patch().rig().name()))
                .distinct()
                .count()
            == 1;
    return withWindow || question.purpose() == Purpose.BEST && one
        ? Optional.of(new Coverage(Answers.of(log, desk.now())))
        : Optional.empty();
  }

  /** Where the best setting is found: a setting that came out clean need not be it. */
  private static String best(Question question, List<PatchEntry> found) {
    if (question.purpose() != Purpose.BEST) {
      return "";
    }
    String commands =
        found.stream()
            .map(e -> Stratum.of(e.patch()))
            .map(s -> "`charline window \"%s\" \"%s\"`".formatted(s.family(), s.wood()))
            .distinct()
            .limit(3)
            .collect(Collectors.joining(", "));
    return "\n"
        + Table.paragraph(
            "The best setting is the one with most margin to char and to residue on both sides: ask"
                + " "
                + commands
                + ".")
        + "\n";
  }

  private List<Json> rows(List<PatchEntry> found) {
    return reply.csv() ? PatchView.lines(found) : found.stream().map(PatchView::json).toList();
  }
}
