package charline.cli.rig;

import charline.cli.render.ShowCommand;
import charline.log.Logbook;
import charline.log.VoidCheck;
import charline.log.VoidUpkeep;
import charline.trial.Rig;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code rig show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show a rig with its power checks, upkeep and changes.",
    description = "Usual settings are in W, nm, mm, kHz and ns; power checks in W.",
    footer = {"", "Example:", "  charline rig show Heron"})
public final class RigShow extends ShowCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Override
  protected Shown shown(Logbook log) {
    Rig rig = log.rig(name);
    List<VoidCheck> voided = log.rigEntries().voidChecks(rig);
    List<VoidUpkeep> voidUpkeep = log.rigEntries().voidUpkeep(rig);
    return new Shown(
        () -> RigView.jsonWithChecks(rig, voided, voidUpkeep),
        () -> RigView.text(rig, voided, voidUpkeep),
        log.history(rig));
  }
}
