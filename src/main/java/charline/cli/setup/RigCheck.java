package charline.cli.setup;

import charline.cli.desk.Desk;
import charline.cli.desk.Sure;
import charline.cli.desk.Typed;
import charline.cli.desk.When;
import charline.cli.desk.Work;
import charline.log.Logbook;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.trial.Plausibility;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.wording.Figures;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig check}. */
@Command(
    name = "check",
    header = "Record a metered power.",
    description =
        "Every patch burned from then on counts with what the meter showed on the work, "
            + "in W, not with what the dial says.",
    footer = {"", "Example:", "  charline rig check Heron --power 100%% --metered 187W"})
public final class RigCheck extends Work {
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
      description = "What the meter showed, in W.")
  private String metered;

  @Option(names = "--at", paramLabel = "TIME", description = "When. Default: now.")
  private String at;

  @Option(names = "--by", paramLabel = "WHO", description = "Who metered.")
  private String by;

  @Mixin private Sure sure;

  public RigCheck(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    try (Logbook log = desk.logToWrite()) {
      Rig rig = log.rig(name);
      PowerCheck check =
          new PowerCheck(
              log.newId(),
              at == null ? desk.now() : When.past("--at", at, desk.now(), desk.clock().getZone()),
              Typed.percentage("--power", power),
              Typed.measure("--metered", metered, Quantity.POWER));
      double factor = check.factor(rig.ratedWatts());
      sure.require(Plausibility.about(check, rig));
      log.addCheck(rig.name(), check, desk.person(by));
      desk.out()
          .println(
              "%s gave %s W at %s %%: %s of its nominal power from %s on."
                  .formatted(
                      rig.name(),
                      Invariant.plain(check.meteredWatts()),
                      Invariant.plain(check.percent()),
                      Figures.percent(factor),
                      check.at().toLocalDate()));
    }
    return DONE;
  }
}
