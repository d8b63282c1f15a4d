package charline.cli.word;

import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.OwnWord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code family amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct what an added family is like; the old value stays in the history.",
    description = "Cautions, usual film (um) and behaviour follow at once.",
    footer = {
      "",
      "Example:",
      "  charline family amend \"deck varnish\" --like alkyd --why \"softened in alkali\""
    })
public final class FamilyAmend extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "A coating family that somebody added.")
  private String name;

  @Option(
      names = "--like",
      paramLabel = "FAMILY",
      required = true,
      description = "The known family that it is most like.")
  private String like;

  @Mixin private AmendedWord word;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      OwnWord amended = word.amend(desk, log, OwnWords.Sort.FAMILY, name, like);
      reply.say(
          desk.out(),
          () -> FamilyView.json(log, amended.name()),
          "Coating family %s is like %s now. It carries its cautions: %s."
              .formatted(
                  amended.name(),
                  amended.like(),
                  WordsText.topics(log.reference().cautionsOf(amended.name()))));
    }
    return DONE;
  }
}
