package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.ModelAnswer;
import charline.answer.TrialQuestion;
import charline.cli.render.JsonReply;
import charline.model.Event;
import charline.wording.ModelJson;
import charline.wording.ModelText;
import picocli.CommandLine.Command;

/** {@code onset}. */
@Command(
    addMethodSubcommands = false,
    name = "onset",
    header = "Show the burn-onset model: how much dose chars the wood.",
    description =
        "Counts first, then the parameters with 90 %% intervals, the dose in J/cm2 that "
            + "chars as often as not, and checks of the fit.",
    footer = {
      "",
      "Example:",
      "  charline onset latex pine",
      "  charline onset latex pine --classical firth"
    })
public final class Onset extends ModelCommand {
  public Onset() {
    super(Event.CHAR);
  }

  @Override
  int model(Answers answers, TrialQuestion asked, JsonReply reply) {
    ModelAnswer onset = answers.onset(asked);
    reply.print(desk.out(), () -> ModelJson.of(onset), () -> ModelText.of(onset).text());
    return onset.checks().fail() ? DATA : DONE;
  }
}
