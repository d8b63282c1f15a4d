package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.log.Logbook;
import charline.log.merge.Merge;
import charline.log.merge.Merged;
import charline.log.merge.Resolution;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.wording.Table;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code merge}. */
@Command(
    name = "merge",
    header = "Bring another bench's log into this one.",
    description =
        "All of it comes in, or nothing; the other file is left as it is. Merging twice adds"
            + " nothing. A code that is taken here gets a new one; the old one stays in the"
            + " history. What only the other bench amended comes in as it is there. What both"
            + " amended is named and stays as it is here, until you say which holds. A damaged"
            + " photo stays out. Patches of one trial sheet that was imported into both logs would"
            + " count twice, so they are refused. Exit codes: 0 all of it is in, 1 something is"
            + " left to decide or was left out.",
    footer = {
      "",
      "Examples:",
      "  charline merge slipway.db",
      "  charline merge slipway.db --take there"
    })
public final class MergeLog extends LogCommand {
  @Parameters(paramLabel = "OTHER.db", description = "The other log.")
  private Path other;

  @Option(
      names = "--take",
      paramLabel = "SIDE",
      description =
          "Where both were amended: here keeps this log's values, there takes the other's; the "
              + "history keeps both.")
  private String take;

  @Option(names = "--by", paramLabel = "WHO", description = "Who decides.")
  private String by;

  @Option(
      names = "--sure",
      description = "Bring in patches that look like ones of this log: they are others.")
  private boolean sure;

  @Override
  public Integer call() {
    Resolution side = side();
    try (Logbook log = desk.logToWrite()) {
      Merged merged =
          Merge.into(log, desk.person(by)).sure(sure).confirmedBy("add --sure").from(other, side);
      line(other.getFileName() + ": " + broughtIn(merged) + ".");
      merged.notes().forEach(this::line);
      if (merged.settled() > 0) {
        line(
            "%s settled as %s."
                .formatted(
                    Figures.count(merged.settled(), "conflict is", "conflicts are"),
                    side == Resolution.HERE ? "recorded here" : "recorded there"));
      }
      merged.damage().forEach(this::line);
      merged.conflicts().forEach(this::line);
      if (!merged.conflicts().isEmpty()) {
        line(
            "%s to decide, and left as here: amend what is wrong, or merge again with --take here or --take there."
                .formatted(
                    Figures.count(merged.conflicts().size(), "conflict is", "conflicts are")));
      }
      return merged.conflicts().isEmpty() && merged.damage().isEmpty() ? DONE : NO;
    }
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

  private static String broughtIn(Merged merged) {
    List<String> parts = new ArrayList<>();
    count(parts, merged.patches(), "new patch", "new patches", merged.newVoid(), "void");
    count(parts, merged.readings(), "new reading", "new readings");
    count(parts, merged.plans().added(), "new planned patch", "new planned patches");
    count(
        parts,
        merged.plans().burned(),
        "planned patch burned there",
        "planned patches burned there");
    count(
        parts,
        merged.plans().givenUp(),
        "planned patch given up there",
        "planned patches given up there");
    count(parts, merged.photos(), "new photo", "new photos");
    count(parts, merged.rigs(), "new rig", "new rigs");
    merged
        .powers()
        .checks()
        .forEach(
            (rig, checks) ->
                count(
                    parts,
                    checks,
                    "new power check of rig " + rig,
                    "new power checks of rig " + rig));
    count(parts, merged.boards(), "new board", "new boards");
    count(parts, merged.finishes(), "new finish", "new finishes");
    count(
        parts,
        merged.amended(),
        "amended as there",
        "amended as there",
        merged.voided(),
        "void now");
    int powers = merged.powers().patches();
    return (parts.isEmpty() ? "nothing new" : String.join(", ", parts))
        + (powers == 0
            ? ""
            : "; "
                + Figures.count(powers, "patch counts", "patches count")
                + " with another power from now on");
  }

  private static void count(List<String> parts, int number, String one, String many) {
    if (number > 0) {
      parts.add(Figures.count(number, one, many));
    }
  }

  /** A count, and in brackets how many of those are what has to be said of them. */
  private static void count(
      List<String> parts, int number, String one, String many, int some, String what) {
    String aside = some == 0 ? "" : " (%d %s)".formatted(some, what);
    count(parts, number, one + aside, many + aside);
  }

  private void line(String sentence) {
    desk.out().println(Table.paragraph(sentence));
  }
}
