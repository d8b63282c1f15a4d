package charline.cli.board;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.trial.Board;
import charline.wording.Table;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code board list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List the boards.",
    description = "Moisture is in %%.",
    footer = {"", "Example:", "  charline board list"})
public final class BoardList extends LogCommand {
  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      List<Board> boards = log.boards();
      reply.print(
          desk.out(), () -> boards.stream().map(BoardView::json).toList(), () -> table(boards));
      return boards.isEmpty() ? NO : DONE;
    }
  }

  private static String table(List<Board> boards) {
    if (boards.isEmpty()) {
      return "No board is set up yet; `charline board add --help` shows how.\n";
    }
    Table table = new Table("board", "wood", "form", ">moisture", "job");
    for (Board board : boards) {
      table.row(
          board.name(),
          board.wood(),
          board.form().word(),
          BoardView.moisture(board).orElse("-"),
          board.job().orElse("-"));
    }
    return table.text();
  }
}
