package charline.cli.trials;

import charline.answer.Priors;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.wording.PriorFileText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code prior}. */
@Command(
    name = "prior",
    header = "Print the priors of the models, with the reason and source of each.",
    description =
        "Prints a text file with one line for each parameter of the burn-onset (char) and removal"
            + " (clearing) models, doses in J/cm2. Save it, edit it, and give it to any question"
            + " about trials.",
    footer = {"", "Example:", "  charline prior"})
public final class PriorShow extends LogCommand {
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    reply.print(
        desk.out(),
        () -> PriorFileText.json(Priors.USUAL),
        () -> PriorFileText.of(Priors.USUAL, "give the file to `charline window --prior FILE`"));
    return DONE;
  }
}
