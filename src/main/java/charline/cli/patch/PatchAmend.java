package charline.cli.patch;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.TypedValues;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.cli.render.PatchView;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.record.Codes;
import charline.record.Patches;
import charline.refusal.Refusal;
import charline.trial.KnobReader;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.wording.Json;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code patch amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct the record of a patch; the old values stay in the history.",
    description =
        "Values that you do not give stay unchanged. Options are those of patch add, in the same"
            + " units (mm/s, mm, kHz, ns, um).",
    footer = {
      "",
      "Examples:",
      "  charline patch amend P-0042 --hand 18mm/s --why \"misread the dial\"",
      "  charline patch amend P-0042 --reading 2 --outcome char --why \"by daylight\"",
      "  charline patch amend P-0042 --burned-by Bo --why \"was recorded for Bo\"",
      "  charline patch amend --those \"my patches of this morning\" --board sill-2 --why slip"
    })
public final class PatchAmend extends LogCommand {
  @Parameters(arity = "0..1", paramLabel = "CODE", description = "The patch: P-0042, 42 or last.")
  private String code;

  @Mixin private ThoseOption those;

  @Option(names = "--rig", paramLabel = "NAME", description = "The rig.")
  private String rigName;

  @Option(names = "--board", paramLabel = "NAME", description = "The board.")
  private String boardName;

  @Option(names = "--finish", paramLabel = "NAME", description = "The finish.")
  private String finishName;

  @Mixin private KnobOptions knobs;

  @Option(
      names = "--reading",
      paramLabel = "COUNT",
      description = "Amend the reading made after this many passes. Default: the only one.")
  private String readingAfter;

  @Mixin private ReadingOptions seen;

  @Option(
      names = "--note",
      paramLabel = "TEXT",
      description = "The note: on the reading if --reading is given, else on the patch.")
  private String note;

  @Option(names = "--bring-back", description = "Let a void patch count again.")
  private boolean bringBack;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "When it was burned; with --reading, when that reading was judged.")
  private String at;

  @Option(
      names = "--burned-by",
      paramLabel = "WHO",
      description = "Who burned it. The reading made on burning follows.")
  private String burnedBy;

  @Option(
      names = "--judged-by",
      paramLabel = "WHO",
      description = "Who judged the reading. Default: unchanged.")
  private String judgedBy;

  @Mixin private WhyOption why;
  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    String reason = why.reasonIfAny();
    if ((code == null) != those.given()) {
      throw Refusal.usage(
          "Name the patch by its code, or several by a question with --those; give one of the"
              + " two.");
    }
    try (Logbook log = desk.logToRead()) {
      if (those.given()) {
        return all(log, reason);
      }
      PatchEntry old =
          bringBack
              ? Codes.recorded(log, code, why.person(desk))
              : Codes.patch(log, code, why.person(desk));
      if (bringBack && old.voided().isEmpty()) {
        throw Refusal.usage("%s is not void, so it counts already.".formatted(old.patch().code()));
      }
      PatchEntry amended = amended(log, old);
      new Patches(log, sure).amend(old, amended, why.person(desk), reason);
      reply.print(
          desk.out(),
          () -> PatchView.json(amended),
          () -> Table.paragraph(sentence(amended.patch()) + standing(amended)) + "\n");
    }
    return DONE;
  }

  /** The same of every patch that a question names: all of them or none. */
  private int all(Logbook log, String reason) {
    List<PatchEntry> found = those.confirmed(log, desk, "amend");
    List<PatchEntry> amended =
        log.inTransaction(
            () ->
                found.stream()
                    .map(
                        old -> {
                          PatchEntry now = amended(log, old);
                          new Patches(log, sure).amend(old, now, why.person(desk), reason);
                          return now;
                        })
                    .toList());
    if (reply.json()) {
      desk.out().println(Json.text(amended.stream().map(PatchView::json).toList()));
    } else {
      amended.forEach(
          each -> desk.out().println(Table.paragraph(sentence(each.patch()) + standing(each))));
    }
    return DONE;
  }

  private static String sentence(Patch patch) {
    return "%s now reads: %s: %s; %s."
        .formatted(
            patch.code(),
            SettingsText.settings(patch.settings()),
            SettingsText.dose(patch),
            patch.readings().stream()
                .map(r -> r.outcome().text() + " after " + SettingsText.passes(r.passes()))
                .collect(Collectors.joining(", ")));
  }

  private String standing(PatchEntry amended) {
    if (bringBack) {
      return " It counts again.";
    }
    return amended.voided().isEmpty() ? "" : " It is still void.";
  }

  private PatchEntry amended(Logbook log, PatchEntry old) {
    Patch patch = old.patch();
    Rig rig = rigName == null ? patch.rig() : log.rig(rigName);
    KnobReader.Result dialled = knobs.amend(rig, old);
    OffsetDateTime burned =
        at == null || readingAfter != null ? patch.burnedAt() : desk.past("--at", at);
    Optional<String> burner = Optional.ofNullable(burnedBy).map(String::strip).or(old::by);
    Patch now =
        new Patch(
            patch.id(),
            patch.code(),
            burned,
            rig,
            boardName == null ? patch.board() : log.board(boardName),
            finishName == null ? patch.finish() : log.finish(finishName),
            dialled.orRefuse(),
            dialled.circumstances(),
            dialled.size(),
            readings(patch, withBurning(old, burned, burner)));
    if (at != null) {
      Judging.requireAfterBurning(now);
    }
    Optional<String> newNote =
        note != null && readingAfter == null ? Optional.of(note) : old.note();
    return new PatchEntry(
        now, dialled.typed(), burner, newNote, bringBack ? Optional.empty() : old.voided());
  }

  /** Readings where what was judged on burning, by whoever burned, follows the burning. */
  private static List<Reading> withBurning(
      PatchEntry old, OffsetDateTime burned, Optional<String> burner) {
    return old.patch().readings().stream()
        .map(
            r ->
                r.at().isEqual(old.patch().burnedAt()) && r.by().equals(old.by())
                    ? new Reading(
                        r.id(),
                        r.passes(),
                        r.outcome(),
                        r.soot(),
                        r.depthMicrometres(),
                        burned,
                        burner,
                        r.note())
                    : r)
        .toList();
  }

  private List<Reading> readings(Patch patch, List<Reading> withBurning) {
    List<Reading> readings = new ArrayList<>(withBurning);
    if (seen.nothingGiven() && readingAfter == null && judgedBy == null) {
      return readings;
    }
    int index = index(patch);
    Reading reading = readings.get(index);
    Optional<String> readingNote =
        readingAfter == null ? Optional.empty() : Optional.ofNullable(note);
    OffsetDateTime judged =
        at == null || readingAfter == null
            ? reading.at()
            : Judging.at(at, desk.past("--at", at), patch);
    Optional<String> judge = Optional.ofNullable(judgedBy).map(String::strip).or(reading::by);
    readings.set(index, seen.amended(reading, judged, judge, readingNote));
    return readings;
  }

  private int index(Patch patch) {
    List<Integer> counts = patch.readings().stream().map(Reading::passes).toList();
    if (readingAfter == null && counts.size() == 1) {
      return 0;
    }
    int index =
        readingAfter == null
            ? -1
            : counts.indexOf(TypedValues.count("--reading", "a count of passes", readingAfter));
    if (index < 0 && counts.size() == 1) {
      throw Refusal.usage(
          "%s has a reading after %s and none after %s; give --reading %d."
              .formatted(
                  patch.code(),
                  SettingsText.passes(counts.get(0)),
                  readingAfter.strip(),
                  counts.get(0)));
    }
    if (index < 0) {
      throw Refusal.usage(
          "%s has readings after %s passes; say with --reading which one to amend."
              .formatted(
                  patch.code(),
                  counts.stream().map(String::valueOf).collect(Collectors.joining(", "))));
    }
    return index;
  }
}
