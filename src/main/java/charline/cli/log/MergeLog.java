package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.log.Logbook;
import charline.log.merge.Merge;
import charline.log.merge.Merged;
import charline.log.merge.Resolution;
import charline.log.merge.SetUpTwice;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code merge}. */
@Command(
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
      line(other.getFileName() + ": " + broughtIn(merged) + ".");
      merged.notes().forEach(this::line);
      merged.joined().forEach(pair -> line(joined(pair)));
      merged.twice().forEach(pair -> line(offer(pair)));
      if (merged.settled() > 0) {
        line(
            "%s resolved as %s."
                .formatted(
                    Figures.count(merged.settled(), "conflict is", "conflicts are"),
                    side == Resolution.HERE ? "recorded here" : "recorded there"));
      }
      merged.damage().forEach(this::line);
      merged.conflicts().forEach(this::line);
      if (!merged.conflicts().isEmpty()) {
        line(
            "%s unresolved; the values here are kept: amend the wrong record, or merge again with --take here or --take there."
                .formatted(
                    Figures.count(merged.conflicts().size(), "conflict is", "conflicts are")));
      }
      return merged.conflicts().isEmpty() && merged.damage().isEmpty() ? DONE : NO;
    }
  }

  private static String joined(SetUpTwice pair) {
    return "%s %s is joined into %s; both names find it."
        .formatted(capital(pair.kind().word()), pair.name(), pair.known());
  }

  private static String offer(SetUpTwice pair) {
    return "%s %s agrees with %s; if they are one, join them: `charline %s join \"%s\" --into \"%s\"`, or merge again with --join."
        .formatted(
            capital(pair.kind().word()),
            pair.name(),
            pair.known(),
            pair.kind().word(),
            pair.name(),
            pair.known());
  }

  private static String capital(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
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
    count(parts, merged.woods(), "new wood", "new woods");
    count(parts, merged.families(), "new coating family", "new coating families");
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
    merged
        .upkeep()
        .forEach(
            (rig, entries) ->
                count(
                    parts,
                    entries,
                    "new upkeep entry of rig " + rig,
                    "new upkeep entries of rig " + rig));
    count(parts, merged.boards(), "new board", "new boards");
    count(parts, merged.finishes(), "new finish", "new finishes");
    count(parts, merged.samples(), "new sample result", "new sample results");
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
    say(sentence);
  }
}
