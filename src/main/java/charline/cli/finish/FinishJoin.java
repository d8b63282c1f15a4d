package charline.cli.finish;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.log.Filter;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.record.Setup;
import charline.trial.Finish;
import charline.wording.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code finish join}. */
@Command(
    name = "join",
    header = "Join two records of one finish.",
    description =
        "Patches of the one count for the other from then on, whose values hold. The history"
            + " keeps where they were, and both names find the finish.",
    footer = {"", "Example:", "  charline finish join \"wall-latex (2)\" --into wall-latex"})
public final class FinishJoin extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The record that goes.")
  private String name;

  @Option(
      names = "--into",
      paramLabel = "NAME",
      required = true,
      description = "The record that stays.")
  private String into;

  @Mixin private WhyOption why;
  @Mixin private SureOption sure;

  @Override
  public Integer call() {
    String reason = why.reasonIfAny();
    try (Logbook log = desk.logToRead()) {
      Finish from = log.finish(name);
      Finish to = log.finish(into);
      new Setup(log, sure, why.person(desk)).join(from, to, reason);
      int patches = log.patches(Filter.onFinish(to.name())).size();
      desk.out()
          .println(
              Table.paragraph(
                  "Finish %s is joined into %s: %s counted for it now. Both names find it."
                      .formatted(
                          from.name(),
                          to.name(),
                          Figures.count(patches, "patch is", "patches are"))));
    }
    return DONE;
  }
}
