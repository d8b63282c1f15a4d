package charline.cli.sample;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.trial.Finish;
import charline.trial.Sample;
import charline.wording.SampleText;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code sample list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List the results of samples.",
    description =
        "By day; void ones only with --all. Values keep the unit that you typed, such as mg/cm2.",
    footer = {
      "",
      "Examples:",
      "  charline sample list",
      "  charline sample list --finish hall-texture --all --csv"
    })
public final class SampleList extends LogCommand {
  @Option(names = "--finish", paramLabel = "NAME", description = "Those of one finish.")
  private String finish;

  @Option(names = "--job", paramLabel = "JOB", description = "Those of one job.")
  private String job;

  @Option(names = "--all", description = "Include void results.")
  private boolean all;

  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      Optional<Finish> of = Optional.ofNullable(finish).map(log::finish);
      List<Sample> samples =
          (all ? log.samples().all() : log.samples().standing())
              .stream()
                  .filter(s -> of.isEmpty() || s.finish().equals(of))
                  .filter(
                      s -> job == null || s.job().filter(job.strip()::equalsIgnoreCase).isPresent())
                  .toList();
      reply.print(
          desk.out(),
          () -> samples.stream().map(SampleText::json).toList(),
          () ->
              samples.isEmpty()
                  ? "No sample result is recorded; `charline sample add --help` shows how.\n"
                  : SampleText.table(samples));
      return samples.isEmpty() ? NO : DONE;
    }
  }
}
