package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig check}. */
@Command(
    addMethodSubcommands = false,
    name = "check",
    header = "Record a power check with a meter.",
    description =
        "Every patch burned from then on counts with the metered power on the work, in W, not with"
            + " the power on the dial. Meter several settings on one day: straight lines join them,"
            + " and below the lowest and above the highest its own factor counts. Of the latest day"
            + " the checks at the nearest repetition rate and pulse duration count. `charline rig"
            + " check amend` corrects a check, `charline rig check void` excludes one.",
    footer = {
      "",
      "Examples:",
      "  charline rig check Heron --power 100%% --metered 187W",
      "  charline rig check Heron --power 30%% --metered 48W --rep 20kHz"
    })
public final class RigCheck extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Option(
      names = "--power",
      paramLabel = "SHARE",
      defaultValue = "100",
      description = "Power on the dial, in %%. Default: 100.")
  private String power;

  @Option(
      names = "--metered",
      paramLabel = "POWER",
      required = true,
      description = "Meter reading, in W.")
  private String metered;

  @Option(
      names = "--rep",
      paramLabel = "RATE",
      description = "Repetition rate that it was metered at, in kHz. Default: the usual one.")
  private String rep;

  @Option(
      names = "--pulse",
      paramLabel = "TIME",
      description = "Pulse duration that it was metered at, in ns. Default: the usual one.")
  private String pulse;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "When; a day counts from its morning on. Default: now.")
  private String at;

  @Option(names = "--by", paramLabel = "WHO", description = "Who measured it.")
  private String by;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToWrite()) {
      Rig rig = log.rig(name);
      PowerCheck check =
          new PowerCheck(
              log.newId(),
              desk.pastFrom("--at", at),
              TypedValues.percentage("--power", power),
              TypedValues.measure("--metered", metered, Quantity.POWER),
              TypedValues.ifGiven("--rep", rep, Quantity.RATE),
              TypedValues.ifGiven("--pulse", pulse, Quantity.PULSE_DURATION));
      double factor = check.factor(rig.ratedWatts());
      new Setup(log, sure, desk.person(by)).add(rig, check);
      reply.say(
          desk.out(),
          () -> RigView.jsonOfCheck(rig, check),
          "%s gave %s W at %s %%: %s of its nominal power from %s on."
              .formatted(
                  rig.name(),
                  Figures.plain(check.meteredWatts()),
                  Figures.plain(check.percent()),
                  Figures.ratio(factor),
                  check.at().toLocalDate()));
    }
    return DONE;
  }
}
