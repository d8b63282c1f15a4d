package charline.cli.sample;

import charline.cli.render.ShowCommand;
import charline.log.Logbook;
import charline.trial.Sample;
import charline.wording.SampleText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code sample show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show the result of a sample and its changes.",
    description = "The value keeps the unit that you typed, such as mg/cm2.",
    footer = {"", "Example:", "  charline sample show S-0003"})
public final class SampleShow extends ShowCommand {
  @Parameters(paramLabel = "CODE", description = "The sample: S-0003 or 3.")
  private String code;

  @Override
  protected Shown shown(Logbook log) {
    Sample sample = log.samples().byCode(code);
    return new Shown(
        () -> SampleText.json(sample),
        () -> SampleText.text(sample),
        log.samples().history(sample));
  }
}
