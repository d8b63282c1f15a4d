package charline.web.entry;

import charline.exposure.Emission;
import charline.exposure.Optics;
import charline.exposure.SpotDefinition;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Circumstances;
import charline.trial.Coat;
import charline.trial.Knob;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Tone;
import charline.trial.Upkeep;
import charline.trial.WoodForm;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.UnaryOperator;

/** Sets up what patches are burned with and on, from the named values of a form. */
public final class SetupForms {
  private static final int MOST_COATS = 6;

  private final Logbook log;
  private final Clock clock;

  public SetupForms(Logbook log, Clock clock) {
    this.log = log;
    this.clock = clock;
  }

  /** Sets up a rig. */
  public void rig(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Emission emission = Emission.ofWord(f.need("kind", "The kind of laser"));
    boolean pulsed = emission == Emission.PULSED;
    Rig rig =
        new Rig(
            log.newId(),
            f.need("name", "A name"),
            emission,
            measure(f.need("rated", "The rated power"), Quantity.POWER),
            measure(f.need("wavelength", "The wavelength"), Quantity.WAVELENGTH),
            SpotDefinition.ofWord(f.need("spot_means", "What the spot diameter means")),
            given(f, "spot", Quantity.LENGTH),
            pulsed ? given(f, "rep", Quantity.RATE) : OptionalDouble.empty(),
            pulsed ? given(f, "pulse", Quantity.PULSE_DURATION) : OptionalDouble.empty(),
            given(f, "width", Quantity.LENGTH),
            pulsed ? given(f, "max_pulse", Quantity.PULSE_ENERGY) : OptionalDouble.empty(),
            Optional.ofNullable(f.line("lens")),
            usual(f),
            optics(f),
            List.of(),
            List.of());
    setup(f, by).add(rig);
  }

  /** The usual circumstances in the form of a rig. */
  static Circumstances usual(Fields f) {
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    for (Knob knob : Knob.USUAL_OF_RIG) {
      Optional.ofNullable(f.line(knob.key()))
          .ifPresent(text -> values.put(knob, knob.read(text, LabelDialect.INSTANCE)));
    }
    return Circumstances.of(values);
  }

  static Optics optics(Fields f) {
    String m2 = f.line(Knob.BEAM_QUALITY.key());
    return new Optics(
        given(f, Knob.FOCUS_SPOT.key(), Quantity.LENGTH),
        m2 == null ? OptionalDouble.empty() : OptionalDouble.of(Measure.plainNumber(m2)));
  }

  /** Records what was done to a rig, as of now. */
  public void upkeep(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Rig rig = log.rig(f.need("rig", "The rig"));
    setup(f, by)
        .add(
            rig, upkeep(f, log.newId(), OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS)));
  }

  static Upkeep upkeep(Fields f, UUID id, OffsetDateTime at) {
    String hours = f.line("hours");
    return new Upkeep(
        id,
        at,
        f.need("what", "What was done"),
        hours == null ? OptionalDouble.empty() : OptionalDouble.of(Measure.plainNumber(hours)),
        Optional.ofNullable(f.line("note")));
  }

  /** Records a metered power, as of now. */
  public void check(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Rig rig = log.rig(f.need("rig", "The rig"));
    PowerCheck check =
        new PowerCheck(
            log.newId(),
            OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS),
            measure(f.need("percent", "The power setting"), Quantity.SHARE),
            measure(f.need("metered", "The metered power"), Quantity.POWER),
            given(f, "rep", Quantity.RATE),
            given(f, "pulse", Quantity.PULSE_DURATION));
    setup(f, by).add(rig, check);
  }

  /** Sets up a board. */
  public void board(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    String wood = log.reference().wood(f.need("wood", "The wood"));
    String said = f.line("form");
    Board board =
        new Board(
            log.newId(),
            f.need("name", "A name"),
            wood,
            said == null ? log.reference().usualForm(wood) : WoodForm.ofWord(said),
            Optional.ofNullable(f.line("condition")),
            given(f, "moisture", Quantity.SHARE),
            Optional.ofNullable(f.line("job")));
    setup(f, by).add(board);
  }

  /** Adds a wood. */
  public void wood(UnaryOperator<String> form, String by) {
    word(OwnWords.Sort.WOOD, form, by);
  }

  /** Adds a coating family. */
  public void family(UnaryOperator<String> form, String by) {
    word(OwnWords.Sort.FAMILY, form, by);
  }

  private void word(OwnWords.Sort sort, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    String also = f.line("also");
    setup(f, by)
        .addWord(
            sort,
            f.need("name", "A name"),
            also == null
                ? List.of()
                : Arrays.stream(also.split(",")).filter(word -> !word.isBlank()).toList(),
            f.need("like", "What it is like"));
  }

  /** Sets up a finish: coats 1, 2, ..., outermost first; a coat without family is left out. */
  public void finish(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    setup(f, by).addFinish(f.need("name", "A name"), f.line("family"), coats(log, f));
  }

  /** The coats of a form, outermost first. */
  static List<Coat> coats(Logbook log, Fields f) {
    List<Coat> coats = new ArrayList<>();
    for (int i = 1; i <= MOST_COATS; i++) {
      String family = f.line("coat" + i);
      if (family != null) {
        coats.add(
            new Coat(
                log.reference().family(family),
                Optional.ofNullable(f.line("tone" + i)).map(Tone::ofWord),
                given(f, "thickness" + i, Quantity.THICKNESS)));
      } else if (f.line("thickness" + i) != null || f.line("tone" + i) != null) {
        throw Refusal.usage(
            "Coat %d has a tone or a thickness but no coating; choose its coating, or clear its tone and thickness."
                .formatted(i));
      }
    }
    return coats;
  }

  private Setup setup(Fields f, String by) {
    return new Setup(log, Doubtful.unless(f.yes("sure")), by);
  }

  private static double measure(String text, Quantity quantity) {
    return Measure.parse(text, quantity).value();
  }

  private static OptionalDouble given(Fields f, String name, Quantity quantity) {
    String text = f.line(name);
    return text == null ? OptionalDouble.empty() : OptionalDouble.of(measure(text, quantity));
  }
}
