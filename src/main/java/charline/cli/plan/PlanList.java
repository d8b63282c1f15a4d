package charline.cli.plan;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.exposure.Figure;
import charline.log.Logbook;
import charline.log.PlannedPatch;
import charline.plan.Purpose;
import charline.trial.Board;
import charline.wording.Json;
import charline.wording.PlanText;
import charline.wording.SettingsJson;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code plan list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List planned patches that are not burned yet.",
    description =
        "Lists the codes that the bench lists of `charline next` reserved, with power (%%) and"
            + " speed (mm/s). Record a planned patch under its code with `charline patch add`, or"
            + " give it up with `charline plan void`.",
    footer = {"", "Examples:", "  charline plan list", "  charline plan list --all --csv"})
public final class PlanList extends LogCommand {
  @Option(names = "--all", description = "Include patches that were burned or given up.")
  private boolean all;

  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      List<PlannedPatch> plans = all ? log.planned().all() : log.planned().open();
      reply.print(desk.out(), () -> plans.stream().map(PlanList::json).toList(), () -> text(plans));
      return plans.isEmpty() ? NO : DONE;
    }
  }

  private static String state(PlannedPatch plan) {
    if (plan.fulfilled()) {
      return "burned";
    }
    return plan.open() ? "open" : "void";
  }

  static Json json(PlannedPatch plan) {
    Json json =
        new Json()
            .put("patch", plan.code())
            .put("state", state(plan))
            .put("family", plan.family())
            .put("wood", plan.wood())
            .put("rig", plan.rig().name())
            .put("board", plan.board().map(Board::name))
            .put("place", plan.place())
            .put("figure", plan.figure().map(Figure::word))
            .put("passes", plan.passes());
    SettingsJson.put(json, plan.settings());
    return json.put("purpose", plan.purpose())
        .put("reason", plan.reasonInFull())
        .put("planned_at", plan.plannedAt().toString())
        .put("by", plan.by())
        .put("void_because", plan.voided());
  }

  private String text(List<PlannedPatch> plans) {
    if (plans.isEmpty()) {
      return Table.paragraph(
              all
                  ? "No patch was ever planned in this log; `charline next FAMILY WOOD --to"
                      + " FILE.html` plans some."
                  : "No planned patch is open; `charline next FAMILY WOOD --to FILE.html` plans"
                      + " some.")
          + "\n";
    }
    Table table =
        all
            ? new Table("code", "state", "planned", "coating, wood, rig", "to burn")
            : new Table("code", "planned", "coating, wood, rig", "to burn");
    plans.forEach(plan -> table.row(cells(plan)));
    return table.text();
  }

  private String[] cells(PlannedPatch plan) {
    String planned = plan.plannedAt().toLocalDate().toString();
    String what = "%s on %s, %s".formatted(plan.family(), plan.wood(), plan.rig().name());
    String burn =
        "%s, %s, on %s: %s"
            .formatted(
                PlanText.settings(plan),
                SettingsText.plannedPasses(plan.passes(), Purpose.ofWord(plan.purpose())),
                plan.place(),
                plan.voided().map(why -> "given up, " + why).orElse(plan.reasonInFull()));
    return all
        ? new String[] {plan.code(), state(plan), planned, what, burn}
        : new String[] {plan.code(), planned, what, burn};
  }
}
