package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.merge.Merge;
import charline.log.merge.Merged;
import charline.log.merge.Resolution;
import charline.log.merge.SetUpTwice;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.wording.Json;
import charline.wording.MergeJson;
import charline.wording.MergeText;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code merge}. */
@Command(
    addMethodSubcommands = false,
    name = "merge",
    header = "Merge another bench's log into this one.",
    description =
        "Either everything is merged or nothing; the other file is not changed. Merging twice adds"
            + " nothing. A patch whose code is taken here gets a new code; the old one stays in the"
            + " history. Records amended only in the other log are amended here too. Records"
            + " amended in both are conflicts. Conflicts are listed and left unchanged until you"
            + " resolve them with --take. Rigs, boards and finishes that both logs set up under one"
            + " name are listed, and joined with --join. Damaged photos are left out. If one trial"
            + " sheet was imported into both logs, its patches would count twice, so the merge is"
            + " refused. Exit codes: 0 everything is merged, 1 a conflict remains or something was"
            + " left out.",
    footer = {
      "",
      "Examples:",
      "  charline merge slipway.db",
      "  charline merge slipway.db --take there",
      "  charline merge slipway.db --join"
    })
public final class MergeLog extends LogCommand {
  @Parameters(paramLabel = "OTHER.db", description = "The other log.")
  private Path other;

  @Option(
      names = "--take",
      paramLabel = "SIDE",
      description =
          "How to resolve conflicts: here keeps this log's values, there takes the other log's. The"
              + " history keeps both.")
  private String take;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who merges. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Option(
      names = "--join",
      description =
          "Join rigs, boards and finishes that both logs have under one name and that agree;"
              + " without it, they are listed.")
  private boolean join;

  @Option(names = "--sure", description = "Import apparent duplicates anyway.")
  private boolean sure;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    Resolution side = side();
    try (Logbook log = desk.logToWrite()) {
      Merged merged =
          Merge.into(log, desk.person(by))
              .sure(sure)
              .joining(join)
              .confirmedBy("add --sure")
              .watched(desk.progress())
              .from(other, side);
      if (reply.json()) {
        desk.out().println(Json.text(MergeJson.of(String.valueOf(other.getFileName()), merged)));
      } else {
        say(merged, side);
      }
      return merged.conflicts().isEmpty() && merged.damage().isEmpty() ? DONE : NO;
    }
  }

  private void say(Merged merged, Resolution side) {
    say(other.getFileName() + ": " + MergeText.broughtIn(merged) + ".");
    merged.notes().forEach(this::say);
    merged.joined().forEach(pair -> say(MergeText.joined(pair)));
    merged.twice().forEach(pair -> say(offer(pair)));
    if (merged.settled() > 0) {
      say(
          "%s resolved as %s."
              .formatted(
                  Figures.count(merged.settled(), "conflict is", "conflicts are"),
                  side == Resolution.HERE ? "recorded here" : "recorded there"));
    }
    merged.damage().forEach(this::say);
    merged.conflicts().forEach(this::say);
    if (!merged.conflicts().isEmpty()) {
      say(
          "%s unresolved; the values here are kept: amend the wrong record, or merge again with --take here or --take there."
              .formatted(Figures.count(merged.conflicts().size(), "conflict is", "conflicts are")));
    }
  }

  private static String offer(SetUpTwice pair) {
    return "%s %s agrees with %s; if they are one, join them: `charline %s join \"%s\" --into \"%s\"`, or merge again with --join."
        .formatted(
            MergeText.capital(pair.kind().word()),
            pair.name(),
            pair.known(),
            pair.kind().word(),
            pair.name(),
            pair.known());
  }

  private Resolution side() {
    if (take == null) {
      return Resolution.UNDECIDED;
    }
    return switch (take) {
      case "here" -> Resolution.HERE;
      case "there" -> Resolution.THERE;
      default -> throw Refusal.usage("--take must be here or there, not \"%s\".".formatted(take));
    };
  }
}
