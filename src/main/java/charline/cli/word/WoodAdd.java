package charline.cli.word;

import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.record.Setup;
import charline.refusal.Refusal;
import charline.trial.OwnWord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code wood add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Add a wood to the words that this log knows.",
    description =
        "The new wood takes over class, pores, resin and cautions of the one that it is like, not"
            + " its specific gravity at 12 %% moisture. Its trials are counted for themselves.",
    footer = {
      "",
      "Example:",
      "  charline wood add \"bog oak\" --like \"european oak\" --also morta"
    })
public final class WoodAdd extends LogCommand {
  @Mixin private AddedWord word;

  @Option(
      names = "--like",
      paramLabel = "WOOD",
      description = "The known wood that it is most like, such as oak.")
  private String like;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    if (like == null) {
      throw Refusal.usage(
          "A wood that you add needs one that it is like, as it takes over its class and cautions;"
              + " add --like, such as --like oak.");
    }
    try (Logbook log = desk.logToWrite()) {
      OwnWord added =
          new Setup(log, reason -> {}, desk.person(word.by))
              .addWord(OwnWords.Sort.WOOD, word.name, word.also, like);
      reply.say(
          desk.out(),
          () -> WoodView.json(log, added.name()),
          "Wood %s is set up, like %s: %s. It calls for the same cautions."
              .formatted(
                  added.name(),
                  added.like(),
                  WoodView.summary(log.reference().woodFacts(added.name()))));
    }
    return DONE;
  }
}
