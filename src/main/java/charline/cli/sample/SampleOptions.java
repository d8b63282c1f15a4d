package charline.cli.sample;

import charline.cli.command.CommandContext;
import charline.cli.command.TypedTime;
import charline.log.Logbook;
import charline.trial.Finish;
import java.time.LocalDate;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What is recorded of a sample beside what was tested for and found. */
final class SampleOptions {
  @Option(names = "--finish", paramLabel = "NAME", description = "The finish that was sampled.")
  private String finish;

  @Option(
      names = "--job",
      paramLabel = "JOB",
      description =
          "The job, for a result about all finishes of it. Without a finish it counts for those"
              + " that were burned on boards of this job alone.")
  private String job;

  @Option(
      names = "--on",
      paramLabel = "DAY",
      description = "Day of the sample or test: 2026-05-04, today or yesterday. Default: today.")
  private String on;

  @Option(
      names = "--tested-by",
      paramLabel = "WHO",
      description = "Laboratory, surveyor or person, or whose data sheet it is.")
  private String testedBy;

  @Option(
      names = "--reference",
      paramLabel = "NUMBER",
      description = "Number of the report or of the sample.")
  private String reference;

  @Option(
      names = "--value",
      paramLabel = "VALUE",
      description = "What was measured, with its unit, such as \"0.2 mg/cm2\".")
  private String value;

  @Option(names = "--note", paramLabel = "TEXT", description = "A note.")
  private String note;

  Optional<Finish> finish(Logbook log) {
    return Optional.ofNullable(finish).map(log::finish);
  }

  Optional<String> job() {
    return Optional.ofNullable(job);
  }

  Optional<LocalDate> day(CommandContext desk) {
    return Optional.ofNullable(on).map(text -> TypedTime.day("--on", text, desk.now()));
  }

  Optional<String> testedBy() {
    return Optional.ofNullable(testedBy);
  }

  Optional<String> reference() {
    return Optional.ofNullable(reference);
  }

  Optional<String> value() {
    return Optional.ofNullable(value);
  }

  Optional<String> note() {
    return Optional.ofNullable(note);
  }
}
