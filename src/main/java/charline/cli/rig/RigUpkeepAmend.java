package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.render.AmendOptions;
import charline.cli.render.AmendOptions.Amended;
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

/** {@code rig upkeep amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct what was recorded of upkeep; the old values stay in the history.",
    description = "Values that you do not give stay unchanged. Running hours are in h.",
    footer = {
      "",
      "Example:",
      "  charline rig upkeep amend Heron last --hours 421 --why \"misread\""
    })
public final class RigUpkeepAmend extends LogCommand {
  @Mixin private UpkeepOfRig which;

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

  @Mixin private AmendOptions options;

  @Override
  public Integer call() {
    return options.amend(desk, this::amended);
  }

  private Amended amended(Logbook log, Setup setup, String reason) {
    Rig rig = which.rig(log);
    List<Upkeep> all =
        bringBack
            ? log.rigEntries().voidUpkeep(rig).stream().map(VoidUpkeep::upkeep).toList()
            : rig.upkeep();
    Upkeep old = which.of(rig, all, desk);
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
      setup.bringBack(rig, old, reason);
    } else {
      setup.amend(rig, old, amended, reason);
    }
    return new Amended(
        () -> RigView.jsonOfUpkeep(rig, amended),
        "The upkeep of rig %s now reads: %s.%s"
            .formatted(
                rig.name(), UpkeepText.words(amended), bringBack ? " It counts again." : ""));
  }
}
