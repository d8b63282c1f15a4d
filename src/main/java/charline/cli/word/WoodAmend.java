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

/** {@code wood amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct what an added wood is like; the old value stays in the history.",
    description =
        "Class, pores, resin and cautions follow at once; a specific gravity at 12 %% moisture it"
            + " has none.",
    footer = {
      "",
      "Example:",
      "  charline wood amend morta --like oak --why \"looked at the rays\""
    })
public final class WoodAmend extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "A wood that somebody added.")
  private String name;

  @Option(
      names = "--like",
      paramLabel = "WOOD",
      required = true,
      description = "The known wood that it is most like.")
  private String like;

  @Mixin private AmendedWord word;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      OwnWord amended = word.amend(desk, log, OwnWords.Sort.WOOD, name, like);
      reply.say(
          desk.out(),
          () -> WoodView.json(log, amended.name()),
          "Wood %s is like %s now: %s."
              .formatted(
                  amended.name(),
                  amended.like(),
                  WoodView.summary(log.reference().woodFacts(amended.name()))));
    }
    return DONE;
  }
}
