package charline.web.entry;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.record.PatchDraft;
import charline.record.Patches;
import charline.record.Plans;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Plausibility.Doubt;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * Records what devices send. A device gives every entry an identity of its own and may send it as
 * often as it likes: it is recorded once.
 */
public final class Entries {
  /** A code that a device may give while it cannot ask for the next one. */
  private static final String OWN_CODE = "W-[0-9A-HJKMNP-TV-Z]{4}";

  private static final String UNDONE = "undone at the bench";

  /** A device's clock is believed this far; beyond it, the server's counts. */
  private static final Duration AHEAD = Duration.ofMinutes(2);

  private static final Duration BEHIND = Duration.ofDays(60);

  private final Logbook log;
  private final Clock clock;

  public Entries(Logbook log, Clock clock) {
    this.log = log;
    this.clock = clock;
  }

  /**
   * Records a patch with its first reading.
   *
   * @param person who is at the bench, if the device does not say
   * @param device what the device is called, for which it is the last patch from then on
   */
  public Receipt patch(Fields fields, String person, String device) {
    return log.inTransaction(
        () -> {
          UUID id = fields.id("id");
          Optional<Receipt> known = known(id);
          if (known.isPresent()) {
            return known.get();
          }
          Rig rig = log.rig(fields.need("rig", "The rig"));
          Board board = log.board(fields.need("board", "The board"));
          Finish finish = log.finish(fields.need("finish", "The finish"));
          Optional<PlannedPatch> plan = plan(fields);
          DialledKnobs dialled = DialledKnobs.read(fields::line);
          List<Doubt> doubts = new ArrayList<>(dialled.doubts());
          plan.ifPresent(
              p -> {
                doubts.addAll(Plans.doubts(p, board));
                doubts.addAll(Plans.doubts(p, finish));
              });
          PatchDraft draft =
              new PatchDraft(
                  id,
                  rig,
                  board,
                  finish,
                  dialled.on(rig),
                  reading(fields, log.newId(), person),
                  fields.note("note"),
                  doubts);
          Patch patch =
              patches(fields)
                  .add(
                      draft,
                      device,
                      () -> plan.map(PlannedPatch::code).orElseGet(() -> code(fields)))
                  .patch();
          return kept(id, patch, draft.reading(), false);
        });
  }

  /** The plan that a patch fulfils; another device may have fulfilled it meanwhile. */
  private Optional<PlannedPatch> plan(Fields fields) {
    return Optional.ofNullable(fields.line("plan"))
        .flatMap(
            code -> log.planned().open().stream().filter(p -> p.code().equals(code)).findFirst());
  }

  private Patches patches(Fields fields) {
    return new Patches(log, Doubtful.unless(fields.yes("sure")));
  }

  private Optional<Receipt> known(UUID id) {
    return log.patch(id).map(e -> kept(id, e.patch(), e.patch().readings().get(0), true));
  }

  private String code(Fields fields) {
    String own = fields.line("tape");
    if (own == null) {
      return log.nextPatchCode();
    }
    if (!own.matches(OWN_CODE)) {
      throw Refusal.usage("A code from a device must look like W-7F3K, not \"%s\".".formatted(own));
    }
    return log.hasPatch(own) ? log.nextPatchCode() : own;
  }

  /** Records a further reading on a patch. */
  public Receipt reading(Fields fields, String person) {
    return log.inTransaction(
        () -> {
          UUID id = fields.id("id");
          PatchEntry entry = entry(fields.id("of_patch"));
          if (log.holds(id)) {
            return kept(id, entry.patch(), entry.patch().lastReading(), true);
          }
          Reading reading =
              notBefore(entry.patch().burnedAt(), reading(fields, id, person, fields.note("note")));
          patches(fields).read(entry.patch(), reading);
          return kept(id, entry.patch(), reading, false);
        });
  }

  /** Takes back a patch or a reading; it stays in the log with its history. */
  public Receipt undo(Fields fields, String person) {
    return log.inTransaction(
        () -> {
          UUID of = fields.id("of");
          PatchEntry entry = entry(fields.id("of_patch"));
          boolean undone = patches(fields).undo(entry, of, by(fields, person), UNDONE);
          return kept(of, entry.patch(), entry.patch().lastReading(), !undone);
        });
  }

  /** The clock of one device may be slower than that of the other; nothing seen is lost by it. */
  private static Reading notBefore(OffsetDateTime burned, Reading r) {
    return r.at().isBefore(burned)
        ? new Reading(
            r.id(),
            r.passes(),
            r.outcome(),
            r.soot(),
            r.depthMicrometres(),
            burned,
            r.by(),
            r.note())
        : r;
  }

  private PatchEntry entry(UUID patch) {
    return log.patch(patch)
        .orElseThrow(
            () ->
                Refusal.usage(
                    "The patch that this entry belongs to is not in the log; record the patch"
                        + " first."));
  }

  /** A patch's own note stands with the patch, so its first reading has none. */
  private Reading reading(Fields fields, UUID id, String person) {
    return reading(fields, id, person, Optional.empty());
  }

  private Reading reading(Fields fields, UUID id, String person, Optional<String> note) {
    String depth = fields.line("depth");
    OptionalDouble micrometres =
        depth == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Measure.parse(depth, Quantity.THICKNESS).value());
    return new Reading(
        id,
        fields.count("passes", "Passes"),
        Outcome.parse(fields.need("outcome", "The outcome")),
        fields.yesOrNo("soot"),
        micrometres,
        at(fields),
        Optional.of(by(fields, person)),
        note);
  }

  private static String by(Fields fields, String person) {
    String by = fields.line("by");
    return by == null ? person : by;
  }

  /** When the person tapped it, which may be long before it could be sent. */
  private OffsetDateTime at(Fields fields) {
    OffsetDateTime now = OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS);
    String text = fields.line("at");
    if (text == null) {
      return now;
    }
    try {
      OffsetDateTime at = OffsetDateTime.parse(text).truncatedTo(ChronoUnit.SECONDS);
      return at.isAfter(now.plus(AHEAD)) || at.isBefore(now.minus(BEHIND)) ? now : at;
    } catch (DateTimeParseException e) {
      return now;
    }
  }

  private static Receipt kept(UUID id, Patch patch, Reading reading, boolean again) {
    return new Receipt(
        id, patch.id(), patch.code(), reading.passes(), reading.outcome().text(), again);
  }
}
