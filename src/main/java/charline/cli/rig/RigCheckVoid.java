package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code rig check void}. */
@Command(
    addMethodSubcommands = false,
    name = "void",
    header = "Exclude a power check.",
    description =
        "It stays in the log with the reason. Doses, windows and the check for drift go by the"
            + " other checks from then on; `charline rig check amend` can make it count again.",
    footer = {
      "",
      "Example:",
      "  charline rig check void Heron 2026-06-01 --why \"the meter was not warm\""
    })
public final class RigCheckVoid extends LogCommand {
  @Mixin private CheckOfRig which;

  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Rig rig = log.rig(which.name);
      PowerCheck check = ChecksOfRig.counting(rig).of(which.which, desk);
      String reason = why.reason("a power check is void", () -> log.isFresh(check.id()));
      log.rigEntries().voidCheck(rig, check, why.person(desk), reason);
      reply.say(
          desk.out(),
          () -> RigView.jsonOfCheck(rig, check).put("void", reason),
          "The power check of rig %s, %s, is void: %s. It stays in the log."
              .formatted(rig.name(), ChecksOfRig.words(check), reason));
    }
    return DONE;
  }
}
