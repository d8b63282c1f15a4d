package charline.cli.patch;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.render.JsonReply;
import charline.cli.render.PatchView;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.record.Codes;
import charline.record.PatchDraft;
import charline.record.Patches;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.KnobReader;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code patch add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Record a patch with its first reading.",
    description =
        "With --like, values that you do not give are copied from that patch, except its readings;"
            + " at a terminal, charline asks for the rest. Give the dose in one of three forms:"
            + " --hand with --width, --scan with --spacing (mm/s, mm), or --area with --seconds.",
    footer = {
      "",
      "Examples:",
      "  charline patch add --board boathouse-1 --finish wall-latex --power 60%% \\",
      "      --hand 22mm/s --passes 1 --outcome residue",
      "  charline patch add --like last --hand 18mm/s --outcome clean",
      "  charline patch add --plan P-0051 --passes 1 --outcome residue"
    })
public final class PatchAdd extends LogCommand {
  @Option(
      names = "--like",
      paramLabel = "CODE",
      description =
          "Copy values that you do not give from this patch: P-0042, 42, or last for the one that"
              + " you burned or recorded last.")
  private String like;

  @Option(
      names = "--plan",
      paramLabel = "CODE",
      description =
          "Code of the planned patch that you burned; its rig, board and settings apply unless you"
              + " give others.")
  private String plan;

  @Option(
      names = "--rig",
      paramLabel = "NAME",
      description = "The rig. Default: the only one, if there is just one.")
  private String rigName;

  @Option(names = "--board", paramLabel = "NAME", description = "The board.")
  private String boardName;

  @Option(names = "--finish", paramLabel = "NAME", description = "The finish.")
  private String finishName;

  @Mixin private KnobOptions knobs;
  @Mixin private ReadingOptions seen;

  @Option(names = "--note", paramLabel = "TEXT", description = "A note on the patch.")
  private String note;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who burned it. Default: $$CHARLINE_BY, else your login name.")
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
    knobs.check();
    if (plan != null && like != null) {
      throw Refusal.usage(
          "A patch follows a plan or another patch: give --plan or --like, not both.");
    }
    try (Logbook log = desk.logToWrite()) {
      PatchDraft draft = draft(log);
      PatchEntry entry =
          new Patches(log, sure)
              .add(
                  draft,
                  desk.person(null),
                  () -> plan == null ? log.nextPatchCode() : log.planned().open(plan).code());
      reply.print(desk.out(), () -> PatchView.json(entry), () -> PatchReply.recorded(entry, log));
    }
    return DONE;
  }

  /** Everything but the code, which is taken only when the patch is added. */
  private PatchDraft draft(Logbook log) {
    Optional<PatchEntry> base =
        plan == null
            ? Optional.ofNullable(like).map(word -> Codes.patch(log, word, desk.person(by)))
            : Optional.of(
                new PlanBase(log.planned().open(plan), log, desk, sure)
                    .entry(boardName, finishName));
    Optional<PatchEntry> last =
        base.isPresent() || !desk.someoneToAsk() ? base : log.lastPatch(desk.person(by));
    Rig rig = rig(log, base, last);
    Board board = board(log, base, last);
    Finish finish = finish(log, base, last);
    if (base.isEmpty()) {
      knobs.ask(desk, rig, last);
    } else if (!base.get().patch().rig().id().equals(rig.id())) {
      knobs.askPower(desk, Optional.empty()); // a share of one rig's power is not that of another
      knobs.askWidth(desk, rig, base.get());
    }
    base.filter(entry -> plan == null)
        .ifPresent(entry -> seen.usePasses(entry.patch().readings().get(0).passes()));
    seen.ask(desk, Optional.of(1));
    KnobReader.Result dialled = knobs.read(rig, base);
    OffsetDateTime burned = desk.past("--at", at);
    Reading reading = seen.reading(log.newId(), burned, desk.person(by), Optional.empty());
    return new PatchDraft(
        log.newId(), rig, board, finish, dialled, reading, Optional.ofNullable(note), List.of());
  }

  private Rig rig(Logbook log, Optional<PatchEntry> base, Optional<PatchEntry> last) {
    if (rigName == null && base.isPresent()) {
      return log.rig(base.get().patch().rig().name());
    }
    List<Rig> rigs = log.rigs();
    if (rigs.isEmpty()) {
      throw Refusal.data(
          "A patch needs a rig, and the log has none; set one up with `charline rig add`.");
    }
    if (rigName == null && rigs.size() == 1) {
      return rigs.get(0);
    }
    return log.rig(
        desk.need(
            rigName,
            "The rig is missing: give --rig, as the log has %d of them.".formatted(rigs.size()),
            "Rig",
            last.map(entry -> entry.patch().rig().name()),
            log::rig));
  }

  private Board board(Logbook log, Optional<PatchEntry> base, Optional<PatchEntry> last) {
    Optional<String> known = last.map(entry -> entry.patch().board().name());
    return boardName == null && base.isPresent()
        ? base.get().patch().board()
        : log.board(
            desk.need(
                boardName,
                "The board is missing: give --board, or copy a patch with --like last.",
                "Board",
                known,
                log::board));
  }

  private Finish finish(Logbook log, Optional<PatchEntry> base, Optional<PatchEntry> last) {
    Optional<String> known = last.map(entry -> entry.patch().finish().name());
    return finishName == null && base.isPresent()
        ? base.get().patch().finish()
        : log.finish(
            desk.need(
                finishName,
                "The finish is missing: give --finish, or copy a patch with --like last.",
                "Finish",
                known,
                log::finish));
  }
}
