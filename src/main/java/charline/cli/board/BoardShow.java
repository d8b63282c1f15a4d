package charline.cli.board;

import charline.cli.render.ShowCommand;
import charline.log.Logbook;
import charline.trial.Board;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code board show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show a board and its changes.",
    description = "Its wood, form, condition, moisture in %% and job.",
    footer = {"", "Example:", "  charline board show boathouse-1"})
public final class BoardShow extends ShowCommand {
  @Parameters(paramLabel = "NAME", description = "The board.")
  private String name;

  @Override
  protected Shown shown(Logbook log) {
    Board board = log.board(name);
    return new Shown(
        () -> BoardView.json(board).put("void", log.voided(board)),
        () -> BoardView.text(board, log.voided(board)),
        log.history(board));
  }
}
