package charline.cli.rig;

import charline.cli.render.JoinCommand;
import charline.log.Filter;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Rig;
import picocli.CommandLine.Command;

/** {@code rig join}. */
@Command(
    addMethodSubcommands = false,
    name = "join",
    header = "Join two records of one rig.",
    description =
        "Patches, power checks and open plans of the one count for the other from then on, whose"
            + " values hold. The history keeps where they were, and both names find the rig.",
    footer = {"", "Example:", "  charline rig join \"Heron (2)\" --into Heron"})
public final class RigJoin extends JoinCommand {
  @Override
  protected String thing() {
    return "Rig";
  }

  @Override
  protected Joined join(Logbook log, Setup setup, String name, String into, String reason) {
    Rig from = log.rig(name);
    Rig to = log.rig(into);
    setup.join(from, to, reason);
    return new Joined(
        from.name(),
        to.name(),
        log.patches(Filter.ofRig(to.name())).size(),
        () -> RigView.json(to));
  }
}
