package charline.cli.patch;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.render.JsonReply;
import charline.cli.render.PatchView;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.record.Codes;
import charline.record.Patches;
import charline.trial.Patch;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code patch read}. */
@Command(
    addMethodSubcommands = false,
    name = "read",
    header = "Record a further reading of a patch.",
    description =
        "Count all passes made so far, so that they rise from reading to reading. Depth is in um.",
    footer = {"", "Example:", "  charline patch read P-0042 --passes 3 --outcome char"})
public final class PatchRead extends LogCommand {
  @Parameters(paramLabel = "CODE", description = "The patch: P-0042, 42 or last.")
  private String code;

  @Mixin private ReadingOptions seen;

  @Option(names = "--note", paramLabel = "TEXT", description = "A note on this reading.")
  private String note;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who judged it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "When: 14:30, 2026-06-01 or \"2026-06-01 14:30\". Default: now.")
  private String at;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Patch patch = Codes.patch(log, code, desk.person(by)).patch();
      seen.ask(desk, Optional.of(patch.lastReading().passes() + 1));
      OffsetDateTime when =
          at == null
              ? Judging.now(desk.now(), patch)
              : Judging.at(at, desk.past("--at", at), patch);
      Reading reading = seen.reading(log.newId(), when, desk.person(by), Optional.ofNullable(note));
      PatchEntry now = new Patches(log, sure).read(patch, reading);
      reply.print(
          desk.out(), () -> PatchView.json(now), () -> PatchReply.read(now.patch(), reading));
    }
    return DONE;
  }
}
