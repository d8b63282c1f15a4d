package charline.cli.trials;

import charline.answer.Priors;
import charline.cli.command.LogCommand;
import charline.wording.Json;
import charline.wording.PriorFileText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code prior}. */
@Command(
    name = "prior",
    header = "Print the priors of the models, with the reason for each.",
    description =
        "Prints a text file with one line for each parameter of the burn-onset (char) and removal"
            + " (clearing) models, doses in J/cm2. Save it, edit it, and give it to any question"
            + " about trials.",
    footer = {"", "Example:", "  charline prior"})
public final class PriorShow extends LogCommand {
  @Option(names = "--json", description = "Print JSON, with units in the keys.")
  private boolean json;

  @Override
  public Integer call() {
    if (json) {
      desk.out().println(Json.text(PriorFileText.json(Priors.USUAL)));
      return DONE;
    }
    desk.out()
        .print(PriorFileText.of(Priors.USUAL, "give the file to `charline window --prior FILE`"));
    return DONE;
  }
}
