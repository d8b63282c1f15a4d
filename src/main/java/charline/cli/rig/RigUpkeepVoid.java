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

/** {@code rig upkeep void}. */
@Command(
    addMethodSubcommands = false,
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
  @Mixin private UpkeepOfRig which;

  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Rig rig = which.rig(log);
      Upkeep upkeep = which.of(rig, rig.upkeep(), desk);
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
