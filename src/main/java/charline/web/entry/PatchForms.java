package charline.web.entry;

import charline.exposure.Emission;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.record.Patches;
import charline.refusal.Refusal;
import charline.trial.DoseKnobs;
import charline.trial.Knob;
import charline.trial.KnobReader;
import charline.trial.KnobValues;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * Puts patches and their readings right from the named values of a form. The form shows what is
 * recorded; what it sends back unchanged stays as it was typed.
 */
public final class PatchForms {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm", Locale.ROOT);

  private final Logbook log;

  public PatchForms(Logbook log) {
    this.log = log;
  }

  /** What the form shows at first, by the name of the field. */
  public static Map<String, String> shown(PatchEntry entry) {
    Patch patch = entry.patch();
    Map<String, String> shown = new LinkedHashMap<>();
    shown.put("rig", patch.rig().name());
    shown.put("board", patch.board().name());
    shown.put("finish", patch.finish().name());
    shown.put("form", DoseKnobs.of(patch.settings().form()).key());
    shown.put("power", Figures.plain(patch.settings().power().value()));
    shown.put("power_unit", patch.settings().power().unit().symbol());
    Map<Knob, String> texts = new EnumMap<>(Knob.class);
    KnobValues.of(patch.settings()).forEach((knob, value) -> texts.put(knob, Figures.plain(value)));
    patch.areaSquareCentimetres().ifPresent(cm2 -> texts.put(Knob.PATCH_AREA, Figures.plain(cm2)));
    texts.putAll(DialledKnobs.words(patch.circumstances()));
    Knob.SETTINGS.forEach(knob -> shown.put(knob.key(), texts.getOrDefault(knob, "")));
    Knob.CIRCUMSTANCES.forEach(knob -> shown.put(knob.key(), texts.getOrDefault(knob, "")));
    shown.put("burned_at", MINUTE.format(patch.burnedAt()));
    shown.put("burned_by", entry.by().orElse(""));
    shown.put("note", entry.note().orElse(""));
    for (int i = 0; i < patch.readings().size(); i++) {
      Reading r = patch.readings().get(i);
      shown.put("passes" + i, String.valueOf(r.passes()));
      shown.put("outcome" + i, r.outcome().text());
      shown.put("soot" + i, r.soot().map(s -> s ? "yes" : "no").orElse(""));
      shown.put(
          "depth" + i,
          r.depthMicrometres().isPresent()
              ? Figures.plain(r.depthMicrometres().getAsDouble())
              : "");
      shown.put("at" + i, MINUTE.format(r.at()));
      shown.put("by" + i, r.by().orElse(""));
      shown.put("note" + i, r.note().orElse(""));
    }
    return shown;
  }

  /**
   * Amends a patch.
   *
   * @param form gives the marks of an outcome with a plus between
   */
  public void amend(PatchEntry old, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Map<String, String> shown = shown(old);
    Patch patch = old.patch();
    Rig rig = log.rig(f.need("rig", "The rig"));
    KnobReader.Result knobs =
        KnobReader.read(
            LabelDialect.INSTANCE,
            changed(f, shown, rig),
            rig,
            Optional.of(new KnobReader.Copied(patch, old.typed(), true)));
    OffsetDateTime burned = moment(f, shown, "burned_at", patch.burnedAt());
    Optional<String> burner = Optional.ofNullable(f.line("burned_by"));
    Patch amended =
        new Patch(
            patch.id(),
            patch.code(),
            burned,
            rig,
            log.board(f.need("board", "The board")),
            log.finish(f.need("finish", "The finish")),
            knobs.orRefuse(),
            knobs.circumstances(),
            knobs.size(),
            readings(f, shown, old, burned, burner));
    new Patches(log, Doubtful.unless(f.yes("sure")))
        .amend(
            old,
            new PatchEntry(amended, knobs.typed(), burner, f.note("note"), old.voided()),
            by,
            f.line("why"));
  }

  /** Lets a void patch count again. */
  public void bringBack(PatchEntry old, UnaryOperator<String> form, String by) {
    if (old.voided().isEmpty()) {
      throw Refusal.usage("%s is not void, so it counts already.".formatted(old.patch().code()));
    }
    Fields f = Fields.of(form);
    new Patches(log, Doubtful.unless(f.yes("sure")))
        .amend(
            old,
            new PatchEntry(old.patch(), old.typed(), old.by(), old.note(), Optional.empty()),
            by,
            f.line("why"));
  }

  /** The knobs that say something else than before; one that was cleared is taken out. */
  private static Map<Knob, String> changed(Fields f, Map<String, String> shown, Rig rig) {
    Map<Knob, String> given = new EnumMap<>(Knob.class);
    DoseKnobs form = DoseKnobs.ofKey(f.need("form", "How the speed is given"));
    boolean otherForm = !form.key().equals(shown.get("form"));
    for (Knob knob : Knob.SETTINGS) {
      boolean ofSpeed = Knob.SETTINGS.indexOf(knob) < Knob.SETTINGS.indexOf(Knob.SPOT);
      boolean pulses = knob == Knob.RATE || knob == Knob.PULSE;
      if (ofSpeed && !form.both().contains(knob) || pulses && rig.emission() != Emission.PULSED) {
        continue;
      }
      String text = text(f, knob);
      if (ofSpeed && otherForm || !text.equals(shown.get(knob.key()))) {
        given.put(knob, text.isEmpty() && mayBeOut(knob) ? KnobReader.NONE : text);
      }
    }
    for (Knob knob : Knob.CIRCUMSTANCES) {
      String text = text(f, knob);
      if (!text.equals(shown.get(knob.key()))) {
        given.put(knob, text.isEmpty() ? KnobReader.NONE : text);
      }
    }
    String unit = "W".equals(f.line("power_unit")) ? "W" : "%";
    String power = Optional.ofNullable(f.line("power")).orElse("");
    if (!power.equals(shown.get("power")) || !unit.equals(shown.get("power_unit"))) {
      boolean watts = power.toLowerCase(Locale.ROOT).endsWith("w") || unit.equals("W");
      given.put(watts && !power.endsWith("%") ? Knob.POWER_W : Knob.POWER_PCT, power);
    }
    return given;
  }

  private static String text(Fields f, Knob knob) {
    return Optional.ofNullable(f.line(knob.key())).orElse("");
  }

  private static boolean mayBeOut(Knob knob) {
    return knob == Knob.PULSE || knob == Knob.PATCH_AREA;
  }

  private static List<Reading> readings(
      Fields f,
      Map<String, String> shown,
      PatchEntry old,
      OffsetDateTime burned,
      Optional<String> burner) {
    List<Reading> kept = new ArrayList<>();
    List<Reading> before = old.patch().readings();
    for (int i = 0; i < before.size(); i++) {
      if (!f.yes("strike" + i)) {
        kept.add(reading(f, shown, i, old, burned, burner));
      }
    }
    if (kept.isEmpty()) {
      throw Refusal.usage(
          "A patch needs one reading or more; void %s instead of striking them all."
              .formatted(old.patch().code()));
    }
    return kept;
  }

  private static Reading reading(
      Fields f,
      Map<String, String> shown,
      int i,
      PatchEntry old,
      OffsetDateTime burned,
      Optional<String> burner) {
    Reading was = old.patch().readings().get(i);
    boolean onBurning = was.at().isEqual(old.patch().burnedAt()) && was.by().equals(old.by());
    OffsetDateTime at = moment(f, shown, "at" + i, was.at());
    Optional<String> judge = Optional.ofNullable(f.line("by" + i));
    String depth = f.line("depth" + i);
    return new Reading(
        was.id(),
        f.count("passes" + i, "Passes"),
        Outcome.parse(f.need("outcome" + i, "The outcome")),
        f.yesOrNo("soot" + i),
        depth == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Measure.parse(depth, Quantity.THICKNESS).value()),
        onBurning && at.isEqual(was.at()) ? burned : at,
        onBurning && judge.equals(was.by()) ? burner : judge,
        f.note("note" + i));
  }

  /** A moment that is shown to the minute is the recorded one unless it was changed. */
  private static OffsetDateTime moment(
      Fields f, Map<String, String> shown, String name, OffsetDateTime recorded) {
    String text = f.need(name, "The time");
    if (text.equals(shown.get(name))) {
      return recorded;
    }
    try {
      return LocalDateTime.parse(text.replace(' ', 'T'))
          .atOffset(recorded.getOffset())
          .truncatedTo(ChronoUnit.SECONDS);
    } catch (DateTimeParseException e) {
      throw Refusal.usage("A time must read like 2026-05-04 14:30, not \"%s\".".formatted(text), e);
    }
  }
}
