package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.ModelAnswer;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.classical.ClassicalRegression;
import charline.wording.ModelJson;
import charline.wording.ModelText;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code onset}. */
@Command(
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
public final class Onset extends LogCommand {
  @Mixin private QuestionOptions options;
  @Mixin private ClassicalOptions classical;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    Optional<ClassicalRegression> regression = classical.regression(options);
    TrialQuestion question = options.question();
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now());
      TrialQuestion asked = question.about(options.about(log));
      return regression.isPresent()
          ? ClassicalOptions.print(
              answers.classical(asked, Event.CHAR, regression.get()), reply, desk)
          : model(answers.onset(asked));
    }
  }

  private int model(ModelAnswer onset) {
    reply.print(desk.out(), () -> ModelJson.of(onset), () -> ModelText.of(onset).text());
    return onset.checks().fail() ? DATA : DONE;
  }
}
