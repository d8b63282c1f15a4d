package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.log.VoidUpkeep;
import charline.quantity.Figures;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.wording.Json;
import charline.wording.Table;
import charline.wording.UpkeepText;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig upkeep list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List what was done to a rig.",
    description = "By time; void entries only with --all. Running hours are in h.",
    footer = {"", "Example:", "  charline rig upkeep list Heron"})
public final class RigUpkeepList extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Option(names = "--all", description = "Include void entries.")
  private boolean all;

  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      Rig rig = log.rig(name);
      List<VoidUpkeep> voided = all ? log.rigEntries().voidUpkeep(rig) : List.of();
      List<Json> rows =
          Stream.concat(
                  rig.upkeep().stream().map(u -> UpkeepText.json(u).put("void", null)),
                  voided.stream().map(v -> UpkeepText.json(v.upkeep()).put("void", v.why())))
              .toList();
      reply.print(desk.out(), () -> rows, () -> table(rig, voided));
      return rows.isEmpty() ? NO : DONE;
    }
  }

  private static String table(Rig rig, List<VoidUpkeep> voided) {
    if (rig.upkeep().isEmpty() && voided.isEmpty()) {
      return "No upkeep of rig %s is recorded; `charline rig upkeep --help` shows how.\n"
          .formatted(rig.name());
    }
    Table table = new Table("day", "what", ">hours", "note");
    rig.upkeep().forEach(u -> row(table, u, ""));
    voided.forEach(v -> row(table, v.upkeep(), "void: " + v.why()));
    return table.text();
  }

  private static void row(Table table, Upkeep upkeep, String more) {
    table.row(
        upkeep.at().toLocalDate().toString(),
        upkeep.work(),
        upkeep.hours().isPresent() ? Figures.plain(upkeep.hours().getAsDouble()) : "-",
        Stream.of(upkeep.note().orElse(""), more)
            .filter(text -> !text.isEmpty())
            .reduce((a, b) -> a + "; " + b)
            .orElse(""));
  }
}
