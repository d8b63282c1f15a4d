package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.AmendOptions;
import charline.cli.render.AmendOptions.Amended;
import charline.log.Logbook;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.refusal.Refusal;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code rig check amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct a power check; the old values stay in the history.",
    description =
        "Values that you do not give stay unchanged. Doses, windows and the check for drift follow"
            + " at once. Power on the dial is in %%, the meter reading in W, rate in kHz, pulse in"
            + " ns.",
    footer = {
      "",
      "Examples:",
      "  charline rig check amend Heron last --power 60%% --why \"the dial was at 60 %%\"",
      "  charline rig check amend Heron \"2026-06-01 60%%\" --metered 114W"
    })
public final class RigCheckAmend extends LogCommand {
  @Mixin private CheckOfRig which;

  @Option(names = "--power", paramLabel = "SHARE", description = "Power on the dial, in %%.")
  private String power;

  @Option(names = "--metered", paramLabel = "POWER", description = "Meter reading, in W.")
  private String metered;

  @Option(
      names = "--rep",
      paramLabel = "RATE",
      description = "Repetition rate that it was metered at, in kHz; none for the usual one.")
  private String rep;

  @Option(
      names = "--pulse",
      paramLabel = "TIME",
      description = "Pulse duration that it was metered at, in ns; none for the usual one.")
  private String pulse;

  @Option(names = "--at", paramLabel = "TIME", description = "When it was metered.")
  private String at;

  @Option(names = "--bring-back", description = "Let a void check count again.")
  private boolean bringBack;

  @Mixin private AmendOptions options;

  @Override
  public Integer call() {
    return options.amend(desk, this::amended);
  }

  private Amended amended(Logbook log, Setup setup, String reason) {
    Rig rig = log.rig(which.name);
    PowerCheck old =
        (bringBack
                ? ChecksOfRig.out(rig, log.rigEntries().voidChecks(rig))
                : ChecksOfRig.counting(rig))
            .of(which.which, desk);
    PowerCheck amended =
        new PowerCheck(
            old.id(),
            at == null ? old.at() : desk.pastFrom("--at", at),
            power == null ? old.percent() : TypedValues.percentage("--power", power),
            metered == null
                ? old.meteredWatts()
                : TypedValues.measure("--metered", metered, Quantity.POWER),
            RigOptions.value("--rep", rep, Quantity.RATE, old.repetitionKilohertz()),
            RigOptions.value("--pulse", pulse, Quantity.PULSE_DURATION, old.pulseNanoseconds()));
    if (bringBack && amended.equals(old)) {
      setup.bringBack(rig, old, reason);
    } else if (bringBack) {
      throw Refusal.usage("Bring a void check back first, then amend it.");
    } else {
      setup.amend(rig, old, amended, reason);
    }
    return new Amended(
        () -> RigView.jsonOfCheck(rig, amended),
        "The power check of rig %s now reads: %s.%s"
            .formatted(
                rig.name(), RigView.check(rig, amended), bringBack ? " It counts again." : ""));
  }
}
