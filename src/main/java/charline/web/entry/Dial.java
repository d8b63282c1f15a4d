package charline.web.entry;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.TimedArea;
import charline.quantity.Figures;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.Rig;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * The knobs as they stand at the bench.
 *
 * @param form how the speed is given
 * @param powerUnit "%" of the dial or "W" on the work, for a power typed without unit
 * @param texts what each knob shows, in the knob's unit unless it says another
 */
public record Dial(Form form, String powerUnit, Map<Knob, String> texts) {
  private static final int LONGEST = 24;

  public Dial {
    texts = Map.copyOf(texts);
  }

  /**
   * Reads the knobs from named values; an absent or blank one is not set.
   *
   * @throws Refusal if one is too long to be a number
   */
  public static Dial read(UnaryOperator<String> value) {
    Map<Knob, String> texts = new EnumMap<>(Knob.class);
    for (Knob knob : Knob.values()) {
      String text = value.apply(knob.key());
      if (text != null && !text.isBlank()) {
        if (text.length() > LONGEST) {
          throw Refusal.usage(knob.label() + " must be a number; what came is too long to be one.");
        }
        texts.put(knob, text.strip());
      }
    }
    String form = value.apply("form");
    return new Dial(
        form == null ? Form.HAND : Form.ofKey(form),
        "W".equals(value.apply("power_unit")) ? "W" : "%",
        texts);
  }

  /** The knobs of a patch. */
  public static Dial of(Patch patch) {
    Settings settings = patch.settings();
    Map<Knob, String> texts = new EnumMap<>(Knob.class);
    texts.put(Knob.POWER, Figures.plain(settings.power().value()));
    if (settings.form() instanceof HandPass hand) {
      texts.put(Knob.HAND, Figures.plain(hand.handSpeedMillimetresPerSecond()));
      texts.put(Knob.WIDTH, Figures.plain(hand.scanWidthMillimetres()));
    } else if (settings.form() instanceof LineScan scan) {
      texts.put(Knob.SCAN, Figures.plain(scan.spotSpeedMillimetresPerSecond()));
      texts.put(Knob.SPACING, Figures.plain(scan.lineSpacingMillimetres()));
    } else if (settings.form() instanceof TimedArea timed) {
      texts.put(Knob.AREA, Figures.plain(timed.areaSquareCentimetres()));
      texts.put(Knob.SECONDS, Figures.plain(timed.secondsPerPass()));
    }
    texts.put(Knob.SPOT, Figures.plain(settings.spot().diameterMillimetres()));
    settings.pulses().ifPresent(p -> put(texts, p));
    patch.areaSquareCentimetres().ifPresent(a -> texts.put(Knob.PATCH, Figures.plain(a)));
    return new Dial(Form.of(settings.form()), settings.power().unit().symbol(), texts)
        .completedBy(patch.rig());
  }

  private static void put(Map<Knob, String> texts, Pulses pulses) {
    texts.put(Knob.REP, Figures.plain(pulses.repetitionKilohertz()));
    pulses.durationNanoseconds().ifPresent(ns -> texts.put(Knob.PULSE, Figures.plain(ns)));
  }

  /** The knobs of a rig that nothing was burned with yet: its usual settings. */
  public static Dial of(Rig rig) {
    return new Dial(Form.HAND, "%", Map.of()).completedBy(rig);
  }

  /** The same with the rig's usual settings where a knob is not set. */
  Dial completedBy(Rig rig) {
    Map<Knob, String> all = new HashMap<>();
    usual(rig).forEach((knob, value) -> all.put(knob, Figures.plain(value)));
    all.putAll(texts);
    return new Dial(form, powerUnit, all);
  }

  private static Map<Knob, Double> usual(Rig rig) {
    Map<Knob, Double> usual = new EnumMap<>(Knob.class);
    rig.spotMillimetres().ifPresent(v -> usual.put(Knob.SPOT, v));
    rig.repetitionKilohertz().ifPresent(v -> usual.put(Knob.REP, v));
    rig.pulseNanoseconds().ifPresent(v -> usual.put(Knob.PULSE, v));
    rig.scanWidthMillimetres().ifPresent(v -> usual.put(Knob.WIDTH, v));
    return usual;
  }

  /** What a knob shows, blank if it is not set. */
  public String text(Knob knob) {
    return texts.getOrDefault(knob, "");
  }

  /**
   * The settings that these knobs make on a rig.
   *
   * @throws Refusal in one sentence if a knob is missing or makes no sense
   */
  public Settings settings(Rig rig) {
    return new Settings(
        power(), doseForm(), new Spot(need(Knob.SPOT), rig.spotDefinition()), pulses(rig));
  }

  /** Doubts about what the numbers say as they were typed. */
  public List<Doubt> doubts(Rig rig) {
    String text = text(Knob.POWER);
    return text.isEmpty() || inWatts(text) ? List.of() : bareShare(rig.emission(), text);
  }

  /** Doubts about a power in percent that was typed without its sign. */
  public static List<Doubt> bareShare(Emission emission, String text) {
    return text.endsWith("%")
        ? List.of()
        : Plausibility.aboutBareShare(emission, Measure.parse(text, Quantity.SHARE).value());
  }

  private boolean inWatts(String power) {
    return power.toLowerCase(Locale.ROOT).endsWith("w")
        || powerUnit.equals("W") && !power.endsWith("%");
  }

  private PowerSetting power() {
    String text = texts.get(Knob.POWER);
    if (text == null) {
      throw missing(Knob.POWER);
    }
    return inWatts(text)
        ? PowerSetting.watts(Measure.parse(text, Quantity.POWER).value())
        : PowerSetting.percent(Measure.parse(text, Quantity.SHARE).value());
  }

  private DoseForm doseForm() {
    return switch (form) {
      case HAND -> new HandPass(need(Knob.WIDTH), need(Knob.HAND));
      case TIMED -> new TimedArea(need(Knob.AREA), need(Knob.SECONDS));
      case SCAN -> new LineScan(need(Knob.SCAN), need(Knob.SPACING));
    };
  }

  private Optional<Pulses> pulses(Rig rig) {
    return rig.emission() == Emission.CONTINUOUS
        ? Optional.empty()
        : Optional.of(new Pulses(need(Knob.REP), given(Knob.PULSE)));
  }

  /** Size of the patch in cm², if given. */
  public OptionalDouble patchSize() {
    return given(Knob.PATCH);
  }

  private double need(Knob knob) {
    return given(knob).orElseThrow(() -> missing(knob));
  }

  private OptionalDouble given(Knob knob) {
    String text = texts.get(knob);
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(Measure.parse(text, knob.quantity()).value());
  }

  private static Refusal missing(Knob knob) {
    return Refusal.usage("%s is not set; give it in %s.".formatted(knob.label(), knob.unit()));
  }

  /**
   * What was typed, by knob and with its unit, as the log keeps it; a rig's usual values are not.
   */
  Map<String, String> typed(Rig rig) {
    Map<Knob, Double> usual = usual(rig);
    Map<String, String> typed = new HashMap<>();
    for (Map.Entry<Knob, String> e : texts.entrySet()) {
      Knob knob = e.getKey();
      boolean ofThisForm =
          switch (knob) {
            case HAND, WIDTH, SCAN, SPACING, AREA, SECONDS ->
                knob == form.pace() || knob == form.across();
            case REP, PULSE -> rig.emission() == Emission.PULSED;
            default -> true;
          };
      boolean asUsual = usual.containsKey(knob) && given(knob).orElseThrow() == usual.get(knob);
      if (ofThisForm && !asUsual) {
        typed.put(knob.key(), withUnit(knob, e.getValue()));
      }
    }
    return typed;
  }

  private String withUnit(Knob knob, String text) {
    String unit = knob == Knob.POWER ? powerUnit : knob.unit().replace("²", "2");
    return Character.isDigit(text.charAt(text.length() - 1)) ? text + unit : text;
  }
}
