package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.ModelAnswer;
import charline.answer.RemovalAnswer;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.classical.ClassicalRegression;
import charline.wording.AblationText;
import charline.wording.CoatText;
import charline.wording.ModelJson;
import charline.wording.ModelText;
import charline.wording.RemovalRateText;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code removal}. */
@Command(
    name = "removal",
    header = "Show the removal model: how many passes clear the finish.",
    description =
        "Counts first, then the parameters with 90 %% intervals, the dose in J/cm2 that "
            + "clears as often as not, passes to clear, um per pass where the coats are known, "
            + "and net area rates in cm2/min.",
    footer = {
      "",
      "Example:",
      "  charline removal latex pine",
      "  charline removal latex pine --classical firth"
    })
public final class Removal extends LogCommand {
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
              answers.classical(asked, Event.CLEARING, regression.get()), reply, desk)
          : model(answers.removal(asked));
    }
  }

  private int model(RemovalAnswer removal) {
    ModelAnswer model = removal.model();
    reply.print(
        desk.out(),
        () ->
            ModelJson.of(model)
                .put("coat", CoatText.json(model.fit()))
                .put("coat_um", removal.coatMicrometres())
                .put("rates", RemovalRateText.json(removal.rates()))
                .put("ablation_law", AblationText.json(removal.ablation())),
        () ->
            ModelText.of(model).text()
                + "\n"
                + RemovalRateText.text(removal.rates())
                + AblationText.of(removal.ablation()));
    return model.checks().fail() ? DATA : DONE;
  }
}
