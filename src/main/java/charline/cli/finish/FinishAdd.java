package charline.cli.finish;

import charline.answer.Precautions;
import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Finish;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code finish add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Set up a finish: the coats on the wood.",
    description =
        "Give one --coat for each coat, outermost first, as FAMILY:TONE:THICKNESS; tone "
            + "(pale, mid, dark) and dry thickness (um, or mil) may be left out.",
    footer = {
      "",
      "Example:",
      "  charline finish add wall-latex --coat latex:pale:90um --coat primer:pale"
    })
public final class FinishAdd extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "Your name for the finish.")
  private String name;

  @Option(
      names = "--coat",
      paramLabel = "COAT",
      required = true,
      description = "A coat, such as latex:pale:90um, varnish:mid or shellac.")
  private List<String> coats;

  @Option(
      names = "--family",
      paramLabel = "FAMILY",
      description = "Coating family that it counts as. Default: that of the outermost coat.")
  private String family;

  @Option(names = "--by", paramLabel = "WHO", description = "Who sets it up.")
  private String by;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToWrite()) {
      Finish finish =
          new Setup(log, sure, desk.person(by))
              .addFinish(name, family, TypedCoats.read(log, coats));
      FinishView.recorded(
          finish,
          "Finish %s is set up: %s, counted as %s."
              .formatted(finish.name(), FinishView.stack(finish), finish.family()),
          Precautions.of(log, finish),
          reply,
          desk.out());
    }
    return DONE;
  }
}
