package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.AmendOptions;
import charline.cli.render.AmendOptions.Amended;
import charline.exposure.Emission;
import charline.exposure.SpotDefinition;
import charline.log.Logbook;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.trial.Rig;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct the record of a rig; the old values stay in the history.",
    description =
        "Values that you do not give stay unchanged; none takes an optional one out. The patches of"
            + " the rig follow it: with another rating, those given in %% count with another power"
            + " where it was never metered. A new name may be used at once, and the old one keeps"
            + " finding the rig. Power is in W, spot and width in mm, rate in kHz, pulse in ns.",
    footer = {
      "",
      "Examples:",
      "  charline rig amend Heron --rated 300W --why \"read off the plate\"",
      "  charline rig amend Heron --name \"Heron 254 mm\" --max-pulse 5mJ"
    })
public final class RigAmend extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Option(names = "--name", paramLabel = "NAME", description = "Its new name.")
  private String newName;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "pulsed or cw; only before its first patch.")
  private String kind;

  @Option(names = "--rated", paramLabel = "POWER", description = "Mean power at 100 %%, in W.")
  private String rated;

  @Option(names = "--wavelength", paramLabel = "LENGTH", description = "In nm.")
  private String wavelength;

  @Option(
      names = "--spot-means",
      paramLabel = "WORD",
      description = "How the maker measures the spot: 1/e2, D4sigma, 1/e or FWHM.")
  private String spotMeans;

  @Mixin private RigOptions usual;
  @Mixin private AmendOptions options;

  @Override
  public Integer call() {
    return options.amend(desk, this::amended);
  }

  private Amended amended(Logbook log, Setup setup, String reason) {
    Rig old = log.rig(name);
    Rig amended =
        new Rig(
            old.id(),
            newName == null ? old.name() : newName.strip(),
            kind == null ? old.emission() : Emission.ofWord(kind),
            rated == null
                ? old.ratedWatts()
                : TypedValues.measure("--rated", rated, Quantity.POWER),
            wavelength == null
                ? old.wavelengthNanometres()
                : TypedValues.measure("--wavelength", wavelength, Quantity.WAVELENGTH),
            spotMeans == null ? old.spotDefinition() : SpotDefinition.ofWord(spotMeans),
            usual.spot(old.spotMillimetres()),
            usual.repetition(old.repetitionKilohertz()),
            usual.pulse(old.pulseNanoseconds()),
            usual.width(old.scanWidthMillimetres()),
            usual.largestPulse(old.largestPulseMillijoules()),
            usual.lens(old.lens()),
            usual.usual(old.usual()),
            usual.optics(old.optics()),
            old.checks(),
            old.upkeep());
    setup.amend(old, amended, reason);
    return new Amended(
        () -> RigView.json(amended),
        "Rig %s now reads: %s. %s affected."
            .formatted(amended.name(), RigView.inFull(amended), RigView.patches(log, amended)));
  }
}
