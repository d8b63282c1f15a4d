package charline.cli.finish;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.trial.Finish;
import charline.wording.Table;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code finish list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List the finishes.",
    description = "Coats are listed outermost first, thickness in um.",
    footer = {"", "Example:", "  charline finish list"})
public final class FinishList extends LogCommand {
  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      List<Finish> finishes = log.finishes();
      reply.print(
          desk.out(),
          () -> finishes.stream().map(reply.csv() ? FinishView::flat : FinishView::json).toList(),
          () -> table(finishes));
      return finishes.isEmpty() ? NO : DONE;
    }
  }

  private static String table(List<Finish> finishes) {
    if (finishes.isEmpty()) {
      return "No finish is set up yet; `charline finish add --help` shows how.\n";
    }
    Table table = new Table("finish", "family", "coats, outermost first");
    finishes.forEach(f -> table.row(f.name(), f.family(), FinishView.stack(f)));
    return table.text();
  }
}
