package charline.cli.rig;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.wording.UpkeepText;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rig upkeep}. */
@Command(
    addMethodSubcommands = false,
    name = "upkeep",
    header = "Record what was done to a rig.",
    description =
        "Control patches start a new run there: `charline rig drift` marks it. With a lens of"
            + " another focal length or another head it is another rig: set it up with `charline"
            + " rig add`. Running hours are in h. `charline rig upkeep list` shows all, `amend`"
            + " corrects one, `void` excludes one.",
    footer = {
      "",
      "Examples:",
      "  charline rig upkeep Heron --what window-cleaned",
      "  charline rig upkeep Heron --what service --at 2026-06-01 --hours 412"
    })
public final class RigUpkeep extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Option(
      names = "--what",
      paramLabel = "WORD",
      required = true,
      description =
          "window-cleaned, window-changed, lens, coolant, service, or with --sure your own word.")
  private String what;

  @Option(
      names = "--hours",
      paramLabel = "HOURS",
      description = "Hours that the source had run by then, in h.")
  private String hours;

  @Option(names = "--note", paramLabel = "TEXT", description = "A note.")
  private String note;

  @Option(names = "--at", paramLabel = "TIME", description = "When. Default: now.")
  private String at;

  @Option(names = "--by", paramLabel = "WHO", description = "Who did it.")
  private String by;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToWrite()) {
      Rig rig = log.rig(name);
      Upkeep upkeep =
          new Upkeep(
              log.newId(),
              desk.past("--at", at),
              what,
              hours(hours, OptionalDouble.empty()),
              Optional.ofNullable(note));
      new Setup(log, sure, desk.person(by)).add(rig, upkeep);
      reply.say(
          desk.out(),
          () -> RigView.jsonOfUpkeep(rig, upkeep),
          "Upkeep of rig %s is recorded: %s. Burn the control patch next: a new run starts here."
              .formatted(rig.name(), UpkeepText.words(upkeep)));
    }
    return DONE;
  }

  /** Running hours as typed; those known where nothing was. */
  static OptionalDouble hours(String text, OptionalDouble known) {
    if (text == null) {
      return known;
    }
    String bare = text.strip().replaceFirst("\\s*h$", "");
    return bare.equalsIgnoreCase("none")
        ? OptionalDouble.empty()
        : OptionalDouble.of(TypedValues.plainNumber("--hours", bare));
  }
}
