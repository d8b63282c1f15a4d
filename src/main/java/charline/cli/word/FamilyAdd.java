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

/** {@code family add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Add a coating family to the words that this log knows.",
    description =
        "The new family takes over the cautions, the usual film (um) and the behaviour of the one"
            + " that it is like. Its trials are counted for themselves.",
    footer = {
      "",
      "Example:",
      "  charline family add \"deck varnish\" --like varnish --also \"yacht varnish\""
    })
public final class FamilyAdd extends LogCommand {
  @Mixin private AddedWord word;

  @Option(
      names = "--like",
      paramLabel = "FAMILY",
      description = "The known family that it is most like, such as varnish.")
  private String like;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    if (like == null) {
      throw Refusal.usage(
          "A family that you add needs one that it is like, as it takes over its cautions; add"
              + " --like, such as --like varnish.");
    }
    try (Logbook log = desk.logToWrite()) {
      OwnWord added =
          new Setup(log, reason -> {}, desk.person(word.by))
              .addWord(OwnWords.Sort.FAMILY, word.name, word.also, like);
      reply.say(
          desk.out(),
          () -> FamilyView.json(log, added.name()),
          "Coating family %s is set up, like %s. It carries its cautions: %s."
              .formatted(
                  added.name(),
                  added.like(),
                  WordsText.topics(log.reference().cautionsOf(added.name()))));
    }
    return DONE;
  }
}
