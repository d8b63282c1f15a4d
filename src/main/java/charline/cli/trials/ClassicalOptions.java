package charline.cli.trials;

import charline.answer.ClassicalAnswer;
import charline.cli.command.CommandContext;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.model.classical.ClassicalFit;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Method;
import charline.refusal.Refusal;
import charline.window.Requirements;
import charline.wording.ClassicalJson;
import charline.wording.ClassicalText;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The classical view of the trials, where it is asked for. */
final class ClassicalOptions {
  /** Below this a one-sided bound would lie on the wrong side of the estimate. */
  private static final double LEAST_CONFIDENCE = 0.51;

  @Option(
      names = "--classical",
      paramLabel = "ml|firth|mixed|aft",
      description =
          "Show a fit without priors instead: logistic regression by maximum likelihood (ml) or"
              + " Firth's penalised likelihood (firth), with a random intercept by board (mixed),"
              + " or log-logistic accelerated failure time on passes (aft). Shows the dose at"
              + " --risk, of char or of finish left, and its bound at --confidence.")
  private String method;

  /**
   * The regression, where the classical view is asked for.
   *
   * @param options whose char risk is the chance, of char or of finish left, whose dose is asked
   *     for
   */
  Optional<ClassicalRegression> regression(QuestionOptions options) {
    if (method == null) {
      return Optional.empty();
    }
    if (options.piece().isPresent()) {
      throw TypedValues.refused(
          "--classical", "a classical fit is of all boards together; leave out --piece.");
    }
    Requirements asked = options.asked(LEAST_CONFIDENCE);
    try {
      return Optional.of(
          new ClassicalRegression(Method.ofWord(method), asked.charRisk(), asked.confidence()));
    } catch (Refusal unknown) {
      throw TypedValues.refused("--classical", unknown.getMessage());
    }
  }

  /** Prints the answer, and gives the exit code. */
  static int print(ClassicalAnswer answer, JsonReply reply, CommandContext desk) {
    reply.print(desk.out(), () -> ClassicalJson.of(answer), () -> ClassicalText.of(answer).text());
    return answer.outcome() instanceof ClassicalFit ? LogCommand.DONE : LogCommand.DATA;
  }
}
