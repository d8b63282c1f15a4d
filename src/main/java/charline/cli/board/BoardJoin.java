package charline.cli.board;

import charline.cli.render.JoinCommand;
import charline.log.Filter;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Board;
import picocli.CommandLine.Command;

/** {@code board join}. */
@Command(
    addMethodSubcommands = false,
    name = "join",
    header = "Join two records of one board.",
    description =
        "Patches and open plans of the one count for the other from then on, whose values hold. The"
            + " history keeps where they were, and both names find the board.",
    footer = {"", "Example:", "  charline board join \"sill-offcut (2)\" --into sill-offcut"})
public final class BoardJoin extends JoinCommand {
  @Override
  protected String thing() {
    return "Board";
  }

  @Override
  protected Joined join(Logbook log, Setup setup, String name, String into, String reason) {
    Board from = log.board(name);
    Board to = log.board(into);
    setup.join(from, to, reason);
    return new Joined(
        from.name(),
        to.name(),
        log.patches(Filter.onBoard(to.name())).size(),
        () -> BoardView.json(to));
  }
}
