package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.trial.Rig;
import charline.wording.Table;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code rig list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List the rigs.",
    description = "Rated power is in W, wavelength in nm, spot in mm.",
    footer = {"", "Example:", "  charline rig list"})
public final class RigList extends LogCommand {
  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      List<Rig> rigs = log.rigs();
      reply.print(desk.out(), () -> rigs.stream().map(RigView::json).toList(), () -> table(rigs));
      return rigs.isEmpty() ? NO : DONE;
    }
  }

  private String table(List<Rig> rigs) {
    if (rigs.isEmpty()) {
      return "No rig is set up yet; `charline rig add --help` shows how.\n";
    }
    Table table = new Table("rig", "kind", ">rated W", ">nm", ">spot mm", "last power check");
    for (Rig rig : rigs) {
      table.row(
          rig.name(),
          rig.emission().word(),
          Figures.plain(rig.ratedWatts()),
          Figures.plain(rig.wavelengthNanometres()),
          RigView.spot(rig),
          RigView.lastCheck(rig, desk.now()).orElse("none"));
    }
    return table.text();
  }
}
