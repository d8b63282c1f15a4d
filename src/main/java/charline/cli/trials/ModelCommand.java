package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.classical.ClassicalRegression;
import java.util.Optional;
import picocli.CommandLine.Mixin;

/** A command that shows what trials say of one event, by the model or by a classical fit. */
abstract class ModelCommand extends LogCommand {
  @Mixin private QuestionOptions options;
  @Mixin private ClassicalOptions classical;
  @Mixin private JsonReply reply;

  private final Event event;

  ModelCommand(Event event) {
    this.event = event;
  }

  @Override
  public Integer call() {
    Optional<ClassicalRegression> regression = classical.regression(options);
    TrialQuestion question = worked(options.question(), regression.isPresent());
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
      TrialQuestion asked = question.about(options.about(log));
      return regression.isPresent()
          ? ClassicalOptions.print(answers.classical(asked, event, regression.get()), reply, desk)
          : model(answers, asked, reply);
    }
  }

  /**
   * A question with what was said of the work.
   *
   * @param classical whether a classical fit is asked
   */
  TrialQuestion worked(TrialQuestion question, boolean classical) {
    return question;
  }

  /** Prints what the model says, and gives the exit code. */
  abstract int model(Answers answers, TrialQuestion asked, JsonReply reply);
}
