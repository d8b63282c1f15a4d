package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.render.ChangesView;
import charline.cli.render.JsonReply;
import charline.log.Change;
import charline.log.Logbook;
import charline.log.VoidCheck;
import charline.log.VoidUpkeep;
import charline.trial.Rig;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code rig show}. */
@Command(
    name = "show",
    header = "Show a rig with its power checks, upkeep and changes.",
    description = "Usual settings are in W, nm, mm, kHz and ns; power checks in W.",
    footer = {"", "Example:", "  charline rig show Heron"})
public final class RigShow extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Rig rig = log.rig(name);
      List<VoidCheck> voided = log.voidChecks(rig);
      List<VoidUpkeep> voidUpkeep = log.voidUpkeep(rig);
      List<Change> changes = log.history(rig);
      reply.print(
          desk.out(),
          () ->
              RigView.jsonWithChecks(rig, voided, voidUpkeep)
                  .put("changes", ChangesView.json(changes)),
          () -> RigView.text(rig, voided, voidUpkeep) + ChangesView.text(changes));
    }
    return DONE;
  }
}
