package charline.cli.ask;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.cli.render.PatchView;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Question;
import charline.log.search.Vocabulary;
import charline.trial.Mark;
import charline.wording.Json;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code find}. */
@Command(
    name = "find",
    header = "Look up patches in plain words.",
    description =
        "Use the words of your own log: coatings, woods, outcomes, times, and the names of rigs,"
            + " boards, finishes, people and jobs. Words and options narrow the search together. If"
            + " you ask for clean patches, the settings that worked are counted. Speeds are in"
            + " mm/s, doses in J/cm2 per pass.",
    footer = {
      "",
      "Examples:",
      "  charline find clean latex over pine last month",
      "  charline find char --wood oak --since 2026-06-01 --csv"
    })
public final class Find extends LogCommand {
  @Parameters(paramLabel = "WORDS", arity = "0..*", description = "The question, in any order.")
  private List<String> words = List.of();

  @Mixin private FilterOptions options;
  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      Filter filter = options.with(asked(log), log, desk);
      List<PatchEntry> found = log.patches(filter);
      if (found.isEmpty()) {
        String sentence =
            FindReport.nothing(
                FilterWords.of(filter, log), log.patches(Filter.ALL), log.hasPatches());
        (reply.forPerson() ? desk.out() : desk.err()).print(sentence);
        if (!reply.forPerson()) {
          reply.print(desk.out(), List.of(), () -> "");
        }
        return NO;
      }
      List<PatchEntry> tried = reply.forPerson() ? log.patches(filter.withoutMarks()) : List.of();
      String searched = FilterWords.of(filter, log);
      boolean cleanWanted = filter.marks().contains(Mark.CLEAN);
      reply.print(
          desk.out(),
          rows(found),
          () ->
              FindReport.text(searched, found)
                  + (cleanWanted ? "\n" + CleanSettings.text(found, tried) : ""));
    }
    return DONE;
  }

  private Filter asked(Logbook log) {
    return words.isEmpty() ? Filter.ALL : Question.parse(words, Vocabulary.of(log), desk.clock());
  }

  private List<Json> rows(List<PatchEntry> found) {
    return reply.csv() ? PatchView.lines(found) : found.stream().map(PatchView::json).toList();
  }
}
