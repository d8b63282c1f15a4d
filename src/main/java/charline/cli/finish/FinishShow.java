package charline.cli.finish;

import charline.answer.Precautions;
import charline.cli.render.ShowCommand;
import charline.log.Logbook;
import charline.trial.Finish;
import charline.wording.PrecautionText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code finish show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show a finish with its coats, what they were tested for, cautions and changes.",
    description = "Coats are listed outermost first, thickness in um.",
    footer = {"", "Example:", "  charline finish show wall-latex"})
public final class FinishShow extends ShowCommand {
  @Parameters(paramLabel = "NAME", description = "The finish.")
  private String name;

  @Override
  protected Shown shown(Logbook log) {
    Finish finish = log.finish(name);
    Precautions known = Precautions.of(log, finish);
    return new Shown(
        () -> PrecautionText.put(FinishView.json(finish), known),
        () -> FinishView.text(finish) + FinishView.warning(known),
        log.history(finish));
  }
}
