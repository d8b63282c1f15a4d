package charline.cli.finish;

import charline.cli.render.JoinCommand;
import charline.log.Filter;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Finish;
import picocli.CommandLine.Command;

/** {@code finish join}. */
@Command(
    addMethodSubcommands = false,
    name = "join",
    header = "Join two records of one finish.",
    description =
        "Patches of the one count for the other from then on, whose values hold. The history"
            + " keeps where they were, and both names find the finish.",
    footer = {"", "Example:", "  charline finish join \"wall-latex (2)\" --into wall-latex"})
public final class FinishJoin extends JoinCommand {
  @Override
  protected String thing() {
    return "Finish";
  }

  @Override
  protected Joined join(Logbook log, Setup setup, String name, String into, String reason) {
    Finish from = log.finish(name);
    Finish to = log.finish(into);
    setup.join(from, to, reason);
    return new Joined(
        from.name(),
        to.name(),
        log.patches(Filter.onFinish(to.name())).size(),
        () -> FinishView.json(to));
  }
}
