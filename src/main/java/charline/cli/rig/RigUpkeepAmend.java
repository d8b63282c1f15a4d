package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.VoidUpkeep;
import charline.record.Setup;
import charline.refusal.Refusal;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.wording.UpkeepText;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig upkeep amend}. */
@Command(
    name = "amend",
    header = "Correct what was recorded of upkeep; the old values stay in the history.",
    description = "Values that you do not give stay unchanged. Running hours are in h.",
    footer = {
      "",
      "Example:",
      "  charline rig upkeep amend Heron last --hours 421 --why \"misread\""
    })
public final class RigUpkeepAmend extends LogCommand {
  @Parameters(index = "0", paramLabel = "NAME", description = "The rig.")
  private String name;

  @Parameters(
      index = "1",
      paramLabel = "UPKEEP",
      description = "The upkeep: last, its day, or its day and work, such as \"2026-06-01 lens\".")
  private String which;

  @Option(names = "--what", paramLabel = "WORD", description = "What was done.")
  private String what;

  @Option(
      names = "--hours",
      paramLabel = "HOURS",
      description = "Hours that the source had run by then, in h; none takes them out.")
  private String hours;

  @Option(names = "--note", paramLabel = "TEXT", description = "The note; none takes it out.")
  private String note;

  @Option(names = "--at", paramLabel = "TIME", description = "When it was done.")
  private String at;

  @Option(names = "--bring-back", description = "Let void upkeep count again.")
  private boolean bringBack;

  @Mixin private WhyOption why;
  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    String reason = why.reasonIfAny();
    try (Logbook log = desk.logToRead()) {
      Rig rig = log.rig(name);
      List<Upkeep> all =
          bringBack
              ? log.rigEntries().voidUpkeep(rig).stream().map(VoidUpkeep::upkeep).toList()
              : rig.upkeep();
      Upkeep old = UpkeepOfRig.of(rig.name(), all, which, desk);
      Upkeep amended =
          new Upkeep(
              old.id(),
              at == null ? old.at() : desk.past("--at", at),
              what == null ? old.work() : what,
              RigUpkeep.hours(hours, old.hours()),
              note == null
                  ? old.note()
                  : Optional.of(note).filter(text -> !text.strip().equalsIgnoreCase("none")));
      if (bringBack && !amended.equals(old)) {
        throw Refusal.usage("Bring void upkeep back first, then amend it.");
      }
      if (bringBack) {
        log.rigEntries().bringBack(rig, old, why.person(desk), reason);
      } else {
        new Setup(log, sure, why.person(desk)).amend(rig, old, amended, reason);
      }
      reply.say(
          desk.out(),
          () -> RigView.jsonOfUpkeep(rig, amended),
          "The upkeep of rig %s now reads: %s.%s"
              .formatted(
                  rig.name(), UpkeepText.words(amended), bringBack ? " It counts again." : ""));
    }
    return DONE;
  }
}
