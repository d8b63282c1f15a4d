package charline.cli.rig;

import charline.answer.Answers;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.drift.Drift;
import charline.log.Logbook;
import charline.wording.DriftReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code rig drift}. */
@Command(
    addMethodSubcommands = false,
    name = "drift",
    header = "Check a rig for drift.",
    description =
        "Adds up the deviations of control patches (the setting burned most on coats of one tone"
            + " and thickness, three times or more) and of power checks (metered W), in standard"
            + " deviations, and shows since when the rig has drifted (cumulative sums, Page 1954)."
            + " Exit code 1 means that it has drifted.",
    footer = {"", "Example:", "  charline rig drift Heron"})
public final class RigDrift extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Drift drift = Answers.of(log, desk.now(), desk.kept()).drift(name);
      reply.print(desk.out(), () -> DriftReport.json(drift), () -> DriftReport.text(drift));
      return drift.since().isPresent() ? NO : DONE;
    }
  }
}
