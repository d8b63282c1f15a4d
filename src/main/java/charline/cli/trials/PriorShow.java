package charline.cli.trials;

import charline.answer.Priors;
import charline.cli.command.LogCommand;
import charline.wording.PriorFileText;
import picocli.CommandLine.Command;

/** {@code prior}. */
@Command(
    name = "prior",
    header = "Print what the models take for likely before any patch, and why.",
    description =
        "Prints a text file: one line for each parameter of the burn-onset (char) and removal"
            + " (clearing) models, doses in J/cm2, with the reason for it. Kept as a file and"
            + " changed, it may be given to any question about trials.",
    footer = {"", "Example:", "  charline prior"})
public final class PriorShow extends LogCommand {
  @Override
  public Integer call() {
    desk.out().print(PriorFileText.of(Priors.USUAL));
    return DONE;
  }
}
