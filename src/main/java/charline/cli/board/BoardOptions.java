package charline.cli.board;

import charline.cli.command.TypedValues;
import charline.quantity.Measure.Quantity;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** Options for a board besides its wood and form. */
final class BoardOptions {
  @Option(names = "--condition", paramLabel = "TEXT", description = "Its condition, in your words.")
  private String condition;

  @Option(
      names = "--moisture",
      paramLabel = "SHARE",
      description = "Moisture meter reading, in %%.")
  private String moisture;

  private static final int LONGEST_JOB = 120;

  @Option(names = "--job", paramLabel = "TEXT", description = "The job that it belongs to.")
  private String job;

  Optional<String> condition() {
    return Optional.ofNullable(condition);
  }

  OptionalDouble moisturePercent() {
    return TypedValues.ifGiven("--moisture", moisture, Quantity.SHARE);
  }

  Optional<String> job() {
    if (job != null && job.length() > LONGEST_JOB) {
      throw TypedValues.refused(
          "--job",
          "A job must be at most %d characters, not %d; shorten it."
              .formatted(LONGEST_JOB, job.length()));
    }
    return Optional.ofNullable(job);
  }
}
