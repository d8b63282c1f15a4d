package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Typed;
import charline.cli.desk.Work;
import charline.cli.render.JsonReply;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.classical.ClassicalFit;
import charline.model.classical.ClassicalOutcome;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Comparison;
import charline.model.classical.Method;
import charline.refusal.Refusal;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The classical view of the trials, where it is asked for. */
final class ClassicalOptions {
  @Option(
      names = "--classical",
      paramLabel = "ml|firth|mixed|aft",
      description =
          "Show a fit without priors instead: logistic regression by maximum likelihood (ml) or"
              + " Firth's penalised likelihood (firth), with a random intercept by board (mixed),"
              + " or log-logistic accelerated failure time on passes (aft).")
  private String method;

  @Option(
      names = "--risk",
      paramLabel = "SHARE",
      description =
          "With --classical: the chance whose dose is asked for, of char or of finish left."
              + " Default: 5%%.")
  private String risk;

  @Option(
      names = "--confidence",
      paramLabel = "SHARE",
      description = "With --classical: how sure its bound must be. Default: 90%%.")
  private String confidence;

  /** Whether the classical view is asked for; refuses its options without it. */
  boolean asked() {
    if (method == null && (risk != null || confidence != null)) {
      throw Typed.refused(
          risk != null ? "--risk" : "--confidence",
          "it goes with --classical ml, firth, mixed or aft; the model's own limits are asked of"
              + " `charline window`.");
    }
    return method != null;
  }

  /** Fits, prints, and gives the exit code. */
  int answer(StratumOptions.Case judged, Event event, JsonReply reply, Desk desk) {
    ClassicalRegression regression = regression();
    ClassicalOutcome outcome = regression.fit(judged.trials(), event);
    Optional<Comparison> comparison =
        outcome instanceof ClassicalFit fit
            ? Optional.of(Comparison.of(fit, regression, posterior(judged, event)))
            : Optional.empty();
    reply.print(
        desk.out(),
        () -> ClassicalJson.of(judged, outcome, regression, comparison),
        () -> new ClassicalText(judged, outcome, regression, comparison).text());
    return outcome instanceof ClassicalFit ? Work.DONE : Work.DATA;
  }

  private static ModelFit posterior(StratumOptions.Case judged, Event event) {
    return Fitter.withDefaults().fit(judged.trials(), event);
  }

  private ClassicalRegression regression() {
    double share = AskedOptions.inside("--risk", risk == null ? "5%" : risk, 0.001, 0.5);
    double sure =
        AskedOptions.inside("--confidence", confidence == null ? "90%" : confidence, 0.51, 0.999);
    try {
      return new ClassicalRegression(Method.ofWord(method), share, sure);
    } catch (Refusal unknown) {
      throw Typed.refused("--classical", unknown.getMessage());
    }
  }
}
