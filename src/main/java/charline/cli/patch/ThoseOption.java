package charline.cli.patch;

import charline.ask.Question;
import charline.cli.ask.FilterOptions;
import charline.cli.command.CommandContext;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.wording.QuestionText;
import charline.wording.Table;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** Patches that a question names instead of their codes, shown and confirmed before any changes. */
final class ThoseOption {
  @Option(
      names = "--those",
      paramLabel = "QUESTION",
      description =
          "The patches that answer this question, as `charline find` is asked, instead of codes."
              + " You see them first and say yes.")
  private String question;

  @Option(names = "--yes", description = "With --those: go on without being asked.")
  private boolean yes;

  boolean given() {
    return question != null;
  }

  /**
   * The patches that are meant, once the person has confirmed them.
   *
   * @param verb what happens to them, such as "void"
   * @throws Refusal if there is none, if nobody can be asked, or if the answer is no
   */
  List<PatchEntry> confirmed(Logbook log, CommandContext desk, String verb) {
    Question asked = FilterOptions.asked(List.of(question), log, desk);
    List<PatchEntry> found = asked.patches(log);
    String read = QuestionText.sentences(asked);
    if (found.isEmpty()) {
      throw Refusal.nothingFound(read + " No patch matches, so there is nothing to " + verb + ".");
    }
    String these =
        "%s %s: %s."
            .formatted(
                read,
                QuestionText.count(found.size()),
                found.stream().map(e -> e.patch().code()).collect(Collectors.joining(", ")));
    desk.err().println(Table.paragraph(these));
    if (yes) {
      return found;
    }
    String answer =
        desk.need(
            null,
            "Nothing is changed yet; add --yes to %s these %s."
                .formatted(verb, QuestionText.count(found.size())),
            "Really %s %s (yes, no)".formatted(verb, QuestionText.count(found.size())),
            Optional.of("no"),
            text -> {});
    if (!List.of("yes", "y").contains(answer.strip().toLowerCase(Locale.ROOT))) {
      throw Refusal.usage("Nothing is changed.");
    }
    return found;
  }
}
