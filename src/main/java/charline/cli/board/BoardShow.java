package charline.cli.board;

import charline.cli.command.LogCommand;
import charline.cli.render.ChangesView;
import charline.cli.render.JsonReply;
import charline.log.Change;
import charline.log.Logbook;
import charline.trial.Board;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code board show}. */
@Command(
    name = "show",
    header = "Show a board and its changes.",
    description = "Its wood, form, condition, moisture in %% and job.",
    footer = {"", "Example:", "  charline board show boathouse-1"})
public final class BoardShow extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The board.")
  private String name;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Board board = log.board(name);
      List<Change> changes = log.history(board);
      reply.print(
          desk.out(),
          () ->
              BoardView.json(board)
                  .put("void", log.voided(board))
                  .put("changes", ChangesView.json(changes)),
          () -> BoardView.text(board, log.voided(board)) + ChangesView.text(changes));
    }
    return DONE;
  }
}
