package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.ModelAnswer;
import charline.answer.RemovalAnswer;
import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.model.Event;
import charline.wording.AblationText;
import charline.wording.CoatContradictionText;
import charline.wording.ModelJson;
import charline.wording.ModelText;
import charline.wording.RemovalRateText;
import charline.wording.WayText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code removal}. */
@Command(
    addMethodSubcommands = false,
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
public final class Removal extends ModelCommand {
  @Mixin private OverlapOption overlap;

  public Removal() {
    super(Event.CLEARING);
  }

  @Override
  TrialQuestion worked(TrialQuestion question, boolean classical) {
    if (classical && overlap.typed()) {
      throw TypedValues.refused(
          "--overlap", "a classical fit gives no area rate; leave one of the two out.");
    }
    return question.with(overlap.strokes());
  }

  @Override
  int model(Answers answers, TrialQuestion asked, JsonReply reply) {
    RemovalAnswer removal = answers.removal(asked);
    ModelAnswer model = removal.model();
    reply.print(
        desk.out(),
        () ->
            ModelJson.of(model)
                .put("coat", WayText.coatJson(model.fit()))
                .put("coat_um", removal.coatMicrometres())
                .put("rates", RemovalRateText.json(removal.rates()))
                .put("ablation_law", AblationText.json(removal.ablation()))
                .put(
                    "contradictions",
                    removal.contradictions().stream().map(CoatContradictionText::json).toList()),
        () ->
            ModelText.of(model).text()
                + "\n"
                + RemovalRateText.text(removal.rates(), model.subject())
                + CoatContradictionText.paragraphs(removal.contradictions())
                + AblationText.of(removal.ablation()));
    return model.checks().fail() ? DATA : DONE;
  }
}
