package charline.cli.finish;

import charline.answer.Precautions;
import charline.cli.command.LogCommand;
import charline.cli.render.ChangesView;
import charline.cli.render.JsonReply;
import charline.log.Change;
import charline.log.Logbook;
import charline.trial.Finish;
import charline.wording.PrecautionText;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code finish show}. */
@Command(
    name = "show",
    header = "Show a finish with its coats, what they were tested for, cautions and changes.",
    description = "Coats are listed outermost first, thickness in um.",
    footer = {"", "Example:", "  charline finish show wall-latex"})
public final class FinishShow extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The finish.")
  private String name;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Finish finish = log.finish(name);
      Precautions known = Precautions.of(log, finish);
      List<Change> changes = log.history(finish);
      reply.print(
          desk.out(),
          () ->
              PrecautionText.put(FinishView.json(finish), known)
                  .put("changes", ChangesView.json(changes)),
          () -> FinishView.text(finish) + FinishView.warning(known) + ChangesView.text(changes));
    }
    return DONE;
  }
}
