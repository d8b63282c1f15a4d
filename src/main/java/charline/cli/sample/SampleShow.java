package charline.cli.sample;

import charline.cli.command.LogCommand;
import charline.cli.render.ChangesView;
import charline.cli.render.JsonReply;
import charline.log.Change;
import charline.log.Logbook;
import charline.trial.Sample;
import charline.wording.SampleText;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code sample show}. */
@Command(
    name = "show",
    header = "Show the result of a sample and its changes.",
    description = "The value keeps the unit that you typed, such as mg/cm2.",
    footer = {"", "Example:", "  charline sample show S-0003"})
public final class SampleShow extends LogCommand {
  @Parameters(paramLabel = "CODE", description = "The sample: S-0003 or 3.")
  private String code;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Sample sample = log.samples().byCode(code);
      List<Change> changes = log.samples().history(sample);
      reply.print(
          desk.out(),
          () -> SampleText.json(sample).put("changes", ChangesView.json(changes)),
          () -> SampleText.text(sample) + ChangesView.text(changes));
    }
    return DONE;
  }
}
