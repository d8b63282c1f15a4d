package charline.cli.record;

import charline.cli.desk.Desk;
import charline.cli.desk.Work;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Refused;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code patch void}. */
@Command(
    name = "void",
    header = "Take a patch out of every analysis.",
    description =
        "It stays in the log with the reason; nothing is ever deleted, and `charline patch amend` "
            + "can let it count again.",
    footer = {
      "",
      "Example:",
      "  charline patch void P-0042 --why \"fired 30 mm/s on the wrong board\""
    })
public final class PatchVoid extends Work {
  @Parameters(paramLabel = "CODE", description = "The patch: P-0042, 42 or last.")
  private String code;

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who takes it out. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  public PatchVoid(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    if (why.isBlank()) {
      throw new Refused(Refused.Kind.USAGE, "--why: a patch is void for a reason; say it.");
    }
    try (Logbook log = desk.logToRead()) {
      PatchEntry entry = Codes.recorded(log, code);
      log.voidPatch(entry.patch().code(), desk.person(by), why.strip());
      desk.out()
          .println(
              "%s is void: %s. It counts in no analysis and stays in the log."
                  .formatted(entry.patch().code(), why.strip()));
    }
    return DONE;
  }
}
