package charline.cli.trials;

import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.window.JobLimit;
import charline.window.Strokes;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** How the work itself is done: in strokes side by side, and what all of it may risk. */
final class WorkOptions {
  @Option(
      names = "--overlap",
      paramLabel = "SHARE",
      defaultValue = "10%",
      description =
          "Share of a stroke's width that the next one covers again, 0 to 50 %%. Seams get their"
              + " passes twice. Default: 10%%, common practice.")
  private String overlap;

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
    TrialQuestion inStrokes =
        question.with(new Strokes(Shares.inside("--overlap", overlap, 0, 0.5)));
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
