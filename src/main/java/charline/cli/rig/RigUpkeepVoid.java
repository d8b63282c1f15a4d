package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.wording.UpkeepText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code rig upkeep void}. */
@Command(
    name = "void",
    header = "Exclude upkeep that was not done.",
    description =
        "It stays in the log with the reason; `charline rig upkeep amend` can make it count again.",
    footer = {
      "",
      "Example:",
      "  charline rig upkeep void Heron last --why \"it was the other rig\""
    })
public final class RigUpkeepVoid extends LogCommand {
  @Parameters(index = "0", paramLabel = "NAME", description = "The rig.")
  private String name;

  @Parameters(
      index = "1",
      paramLabel = "UPKEEP",
      description = "The upkeep: last, its day, or its day and work, such as \"2026-06-01 lens\".")
  private String which;

  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Rig rig = log.rig(name);
      Upkeep upkeep = UpkeepOfRig.of(rig.name(), rig.upkeep(), which, desk);
      String reason = why.reason("upkeep is void", () -> log.isFresh(upkeep.id()));
      log.rigEntries().voidUpkeep(rig, upkeep, why.person(desk), reason);
      reply.say(
          desk.out(),
          () -> RigView.jsonOfUpkeep(rig, upkeep).put("void", reason),
          "The upkeep of rig %s, %s, is void: %s. It stays in the log."
              .formatted(rig.name(), UpkeepText.words(upkeep), reason));
    }
    return DONE;
  }
}
