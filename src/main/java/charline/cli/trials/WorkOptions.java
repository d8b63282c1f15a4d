package charline.cli.trials;

import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.window.JobLimit;
import java.util.OptionalDouble;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How the work itself is done: in strokes side by side, and what all of it may risk. */
final class WorkOptions {
  @Mixin private OverlapOption overlap;

  @Option(
      names = "--job-risk",
      paramLabel = "SHARE",
      description =
          "Highest chance of any charred spot on the whole job, in %%; takes the place of --risk.")
  private String jobRisk;

  /**
   * A question with what was said of the work.
   *
   * @param area of the job, in m², if one was typed
   * @param areaOption the option that gives it
   */
  TrialQuestion of(
      TrialQuestion question, QuestionOptions options, OptionalDouble area, String areaOption) {
    TrialQuestion inStrokes = question.with(overlap.strokes());
    if (jobRisk == null) {
      return area.isPresent()
          ? inStrokes.with(new JobLimit(area.getAsDouble(), OptionalDouble.empty()))
          : inStrokes;
    }
    double risk = Shares.inside("--job-risk", jobRisk, 0.001, 0.5);
    if (options.riskTyped()) {
      throw TypedValues.refused(
          "--job-risk", "give --risk for one area or --job-risk for the whole job, not both.");
    }
    if (area.isEmpty()) {
      throw TypedValues.refused(
          "--job-risk", "the job's area is missing; give it with %s.".formatted(areaOption));
    }
    return inStrokes.with(new JobLimit(area.getAsDouble(), OptionalDouble.of(risk)));
  }
}
