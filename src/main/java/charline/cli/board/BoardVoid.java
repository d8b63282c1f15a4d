package charline.cli.board;

import charline.cli.command.LogCommand;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Filter;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.record.Setup;
import charline.trial.Board;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code board void}. */
@Command(
    addMethodSubcommands = false,
    name = "void",
    header = "Exclude a board and its patches from every analysis.",
    description =
        "It stays in the log with the reason, and so do its patches; `charline board amend` can"
            + " make them count again. Nothing more is burned on it.",
    footer = {
      "",
      "Example:",
      "  charline board void boathouse-1 --why \"it was treated with preservative\""
    })
public final class BoardVoid extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The board.")
  private String name;

  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Board board = log.board(name);
      String reason = why.reason("a board is void", () -> log.isFresh(board.id()));
      int patches = log.patches(Filter.onBoard(board.name())).size();
      new Setup(log, doubts -> {}, why.person(desk)).takeOut(board, reason);
      reply.say(
          desk.out(),
          () -> BoardView.json(board).put("void", reason),
          "Board %s is void: %s. %s in no analysis any more, and it stays in the log."
              .formatted(
                  board.name(), reason, Figures.count(patches, "patch counts", "patches count")));
    }
    return DONE;
  }
}
