package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.exposure.Emission;
import charline.exposure.Optics;
import charline.exposure.SpotDefinition;
import charline.log.Logbook;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.trial.Circumstances;
import charline.trial.Rig;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Set up a rig: one laser source with its head and lens.",
    description =
        "Its usual settings apply to every patch that gives none of its own. With another lens or"
            + " head it is another rig: set it up under its own name.",
    footer = {
      "",
      "Example:",
      "  charline rig add Heron --kind pulsed --rated 200W --wavelength 1064nm \\",
      "      --spot 0.6mm --rep 40kHz --pulse 100ns --width 60mm"
    })
public final class RigAdd extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "Your name for the rig.")
  private String name;

  @Option(names = "--kind", paramLabel = "KIND", required = true, description = "pulsed or cw.")
  private String kind;

  @Option(
      names = "--rated",
      paramLabel = "POWER",
      required = true,
      description = "Mean power at 100 %%, in W.")
  private String rated;

  @Option(
      names = "--wavelength",
      paramLabel = "LENGTH",
      defaultValue = "1064",
      description = "In nm. Default: 1064.")
  private String wavelength;

  @Option(
      names = "--spot-means",
      paramLabel = "WORD",
      defaultValue = "1/e2",
      description =
          "How the maker measures the spot: 1/e2, D4sigma, 1/e or FWHM. The same beam has a"
              + " different number under each. Default: 1/e2.")
  private String spotMeans;

  @Mixin private RigOptions usual;

  @Option(names = "--by", paramLabel = "WHO", description = "Who sets it up.")
  private String by;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    Emission emission = Emission.ofWord(kind);
    try (Logbook log = desk.logToWrite()) {
      Rig rig =
          new Rig(
              log.newId(),
              name.strip(),
              emission,
              TypedValues.measure("--rated", rated, Quantity.POWER),
              TypedValues.measure("--wavelength", wavelength, Quantity.WAVELENGTH),
              SpotDefinition.ofWord(spotMeans),
              usual.spot(OptionalDouble.empty()),
              usual.repetition(OptionalDouble.empty()),
              usual.pulse(OptionalDouble.empty()),
              usual.width(OptionalDouble.empty()),
              usual.largestPulse(OptionalDouble.empty()),
              usual.lens(Optional.empty()),
              usual.usual(Circumstances.UNKNOWN),
              usual.optics(Optics.UNKNOWN),
              List.of(),
              List.of());
      new Setup(log, sure, desk.person(by)).add(rig);
      reply.say(
          desk.out(),
          () -> RigView.json(rig),
          "Rig %s is set up: %s.".formatted(rig.name(), RigView.inShort(rig)));
    }
    return DONE;
  }
}
