package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Rig;
import charline.wording.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig join}. */
@Command(
    name = "join",
    header = "Join two records of one rig.",
    description =
        "Patches, power checks and open plans of the one count for the other from then on, whose"
            + " values hold. The history keeps where they were, and both names find the rig.",
    footer = {"", "Example:", "  charline rig join \"Heron (2)\" --into Heron"})
public final class RigJoin extends LogCommand {
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
      Rig from = log.rig(name);
      Rig to = log.rig(into);
      new Setup(log, sure, why.person(desk)).join(from, to, reason);
      desk.out()
          .println(
              Table.paragraph(
                  "Rig %s is joined into %s: %s counted for it now. Both names find it."
                      .formatted(from.name(), to.name(), RigView.patches(log, to))));
    }
    return DONE;
  }
}
