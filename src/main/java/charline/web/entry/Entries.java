package charline.web.entry;

import charline.exposure.Settings;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.quantity.Invariant;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Plausibility;
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
   */
  public Kept patch(Fields fields, String person) {
    return log.inTransaction(
        () -> {
          UUID id = fields.id("id");
          Optional<Kept> known = known(id);
          if (known.isPresent()) {
            return known.get();
          }
          Rig rig = log.rig(fields.need("rig", "The rig"));
          Dial dial = Dial.read(fields::line);
          Settings settings = dial.settings(rig);
          Reading reading = reading(fields, log.newId(), person);
          OptionalDouble size = dial.patchSize();
          size.ifPresent(cm2 -> Invariant.positive("Patch size", cm2, "cm2"));
          // All at once: a person who is sure of one value has not seen the next doubt.
          List<Doubt> doubts = new ArrayList<>(dial.doubts(rig));
          doubts.addAll(Plausibility.about(rig.emission(), rig.ratedWatts(), settings));
          doubts.addAll(doubts(reading));
          Doubtful.require(fields.yes("sure"), doubts);
          Patch patch =
              new Patch(
                  id,
                  code(fields),
                  reading.at(),
                  rig,
                  log.board(fields.need("board", "The board")),
                  log.finish(fields.need("finish", "The finish")),
                  settings,
                  size,
                  List.of(reading));
          log.add(
              new PatchEntry(
                  patch, dial.typed(rig), reading.by(), fields.note("note"), Optional.empty()));
          return kept(id, patch, reading, false);
        });
  }

  private Optional<Kept> known(UUID id) {
    return log.patch(id).map(e -> kept(id, e.patch(), e.patch().readings().get(0), true));
  }

  private String code(Fields fields) {
    String own = fields.line("tape");
    if (own == null) {
      return log.nextPatchCode();
    }
    if (!own.matches(OWN_CODE)) {
      throw Refusal.usage(
          "A code that a device gives must read like W-7F3K, not \"%s\".".formatted(own));
    }
    return log.hasPatch(own) ? log.nextPatchCode() : own;
  }

  /** Records a further reading on a patch. */
  public Kept reading(Fields fields, String person) {
    return log.inTransaction(
        () -> {
          UUID id = fields.id("id");
          PatchEntry entry = entry(fields.id("of_patch"));
          if (log.holds(id)) {
            return kept(id, entry.patch(), entry.patch().lastReading(), true);
          }
          Reading reading = reading(fields, id, person, fields.note("note"));
          Doubtful.require(fields.yes("sure"), doubts(reading));
          log.addReading(entry.patch().code(), reading);
          return kept(id, entry.patch(), reading, false);
        });
  }

  /** Takes back a patch or a reading; it stays in the log with its history. */
  public Kept undo(Fields fields, String person) {
    return log.inTransaction(
        () -> {
          UUID of = fields.id("of");
          PatchEntry entry = entry(fields.id("of_patch"));
          String by = by(fields, person);
          Patch patch = entry.patch();
          boolean again = false;
          if (of.equals(patch.id())) {
            again = entry.voided().isPresent();
            if (!again) {
              log.voidPatch(patch.code(), by, UNDONE);
            }
          } else {
            again = !strike(entry, of, by);
          }
          return kept(of, patch, patch.lastReading(), again);
        });
  }

  private boolean strike(PatchEntry entry, UUID reading, String by) {
    Patch p = entry.patch();
    List<Reading> left = p.readings().stream().filter(r -> !r.id().equals(reading)).toList();
    if (left.size() == p.readings().size()) {
      return false;
    }
    if (left.isEmpty()) {
      log.voidPatch(p.code(), by, UNDONE);
      return true;
    }
    Patch without =
        new Patch(
            p.id(),
            p.code(),
            p.burnedAt(),
            p.rig(),
            p.board(),
            p.finish(),
            p.settings(),
            p.areaSquareCentimetres(),
            left);
    log.amend(
        new PatchEntry(without, entry.typed(), entry.by(), entry.note(), entry.voided()),
        by,
        UNDONE);
    return true;
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

  private static List<Doubt> doubts(Reading reading) {
    List<Doubt> doubts = new ArrayList<>(Plausibility.Knob.PASSES.doubts(reading.passes()));
    reading.depthMicrometres().ifPresent(um -> doubts.addAll(Plausibility.Knob.DEPTH.doubts(um)));
    return doubts;
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

  private static Kept kept(UUID id, Patch patch, Reading reading, boolean again) {
    return new Kept(
        id, patch.id(), patch.code(), reading.passes(), reading.outcome().text(), again);
  }
}
