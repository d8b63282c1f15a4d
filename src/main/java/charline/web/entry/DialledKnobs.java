package charline.web.entry;

import charline.exposure.Emission;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Circumstances;
import charline.trial.DoseKnobs;
import charline.trial.Knob;
import charline.trial.KnobDialect;
import charline.trial.KnobReader;
import charline.trial.KnobValues;
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
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The knobs as they stand at the bench.
 *
 * @param form how the speed is given
 * @param powerUnit "%" of the dial or "W" on the work, for a power typed without unit
 * @param texts what each knob shows, in the knob's unit unless it says another; the power is under
 *     {@link Knob#POWER_PCT} in either unit
 */
public record DialledKnobs(DoseKnobs form, String powerUnit, Map<Knob, String> texts) {
  private static final int LONGEST = 24;
  private static final int LONGEST_WORD = 120;

  /** All that the page sends: the settings, and how the pass was made. */
  private static final List<Knob> ON_THE_PAGE =
      Stream.of(List.of(Knob.POWER_PCT), Knob.SETTINGS, Knob.CIRCUMSTANCES)
          .flatMap(List::stream)
          .toList();

  private static final KnobDialect LABELS = LabelDialect.INSTANCE;

  public DialledKnobs {
    texts = Map.copyOf(texts);
  }

  /**
   * Reads the knobs from named values; an absent or blank one is not set.
   *
   * @throws Refusal if one is too long to be a number
   */
  public static DialledKnobs read(UnaryOperator<String> value) {
    Map<Knob, String> texts = new EnumMap<>(Knob.class);
    for (Knob knob : ON_THE_PAGE) {
      String text = value.apply(knob.key());
      if (text != null && !text.isBlank()) {
        if (text.length() > (knob.isNumber() ? LONGEST : LONGEST_WORD)) {
          throw Refusal.usage(
              knob.words()
                  + (knob.isNumber()
                      ? " must be a number; what you typed is too long to be one."
                      : " must be a word or two; what you typed is too long."));
        }
        texts.put(knob, text.strip());
      }
    }
    String form = value.apply("form");
    return new DialledKnobs(
        form == null ? DoseKnobs.HAND : DoseKnobs.ofKey(form),
        "W".equals(value.apply("power_unit")) ? "W" : "%",
        texts);
  }

  /** The knobs of a patch. */
  public static DialledKnobs of(Patch patch) {
    Map<Knob, Double> values = KnobValues.of(patch.settings());
    patch.areaSquareCentimetres().ifPresent(cm2 -> values.put(Knob.PATCH_AREA, cm2));
    values.remove(Knob.POWER_W);
    values.put(Knob.POWER_PCT, patch.settings().power().value());
    Map<Knob, String> texts = plain(values);
    texts.putAll(words(patch.circumstances()));
    texts.remove(Knob.STROKES); // were timed on that patch
    texts.remove(Knob.STROKE);
    return new DialledKnobs(
            DoseKnobs.of(patch.settings().form()), patch.settings().power().unit().symbol(), texts)
        .completed(KnobValues.usualOf(patch.rig()));
  }

  /** What is known of circumstances, as a form shows it. */
  public static Map<Knob, String> words(Circumstances circumstances) {
    Map<Knob, String> texts = new EnumMap<>(Knob.class);
    circumstances
        .values()
        .forEach(
            (knob, value) -> {
              if (value instanceof Double number) {
                texts.put(knob, Figures.plain(number));
              } else if (value instanceof Boolean yes) {
                texts.put(knob, yes ? "yes" : "no");
              } else {
                texts.put(knob, value.toString());
              }
            });
    return texts;
  }

  private static Map<Knob, String> plain(Map<Knob, Double> values) {
    Map<Knob, String> texts = new HashMap<>();
    values.forEach((knob, value) -> texts.put(knob, Figures.plain(value)));
    return texts;
  }

  /** The knobs of a rig that nothing was burned with yet: its usual settings. */
  public static DialledKnobs of(Rig rig) {
    return new DialledKnobs(DoseKnobs.HAND, "%", Map.of()).completedBy(rig);
  }

  /** The same with the rig's usual settings where a knob is not set. */
  DialledKnobs completedBy(Rig rig) {
    Map<Knob, String> usual = words(rig.usual());
    usual.putAll(texts);
    return new DialledKnobs(form, powerUnit, usual).completed(KnobValues.usualOf(rig));
  }

  private DialledKnobs completed(Map<Knob, Double> usual) {
    Map<Knob, String> all = plain(usual);
    all.putAll(texts);
    return new DialledKnobs(form, powerUnit, all);
  }

  /** What a knob shows, blank if it is not set. */
  public String text(Knob knob) {
    return texts.getOrDefault(knob, "");
  }

  /** What the knob of that name shows, blank if it is not set. */
  public String text(String key) {
    return Knob.ofKey(key).map(this::text).orElse("");
  }

  /**
   * The settings that these knobs make on a rig, and what was typed, with its unit, as the log
   * keeps it; a rig's usual values are not.
   *
   * @throws Refusal in one sentence if a knob is missing or makes no sense
   */
  public KnobReader.Result on(Rig rig) {
    KnobReader.Result read = KnobReader.read(LABELS, given(rig), rig, Optional.empty());
    read.orRefuse();
    Map<String, String> typed = new HashMap<>(read.typed());
    for (Knob knob : ON_THE_PAGE) {
      typed.computeIfPresent(knob.key(), (key, text) -> withUnit(knob, text));
    }
    return new KnobReader.Result(
        read.settings(), read.circumstances(), read.size(), typed, read.problems());
  }

  /** What counts of the texts: the page keeps those of the other forms, and hides them. */
  private Map<Knob, String> given(Rig rig) {
    Map<Knob, Double> usual = KnobValues.usualOf(rig);
    Map<Knob, String> usualWords = words(rig.usual());
    Map<Knob, String> given = new EnumMap<>(Knob.class);
    texts.forEach(
        (knob, text) -> {
          boolean applies =
              switch (knob) {
                case HAND, WIDTH, SCAN, SPACING, AREA, SECONDS -> form.both().contains(knob);
                case RATE, PULSE -> rig.emission() == Emission.PULSED;
                default -> true;
              };
          boolean changed = !isUsual(knob, text, usual) && !text.equals(usualWords.get(knob));
          if (applies && changed) {
            given.put(knob == Knob.POWER_PCT && inWatts(text) ? Knob.POWER_W : knob, text);
          }
        });
    if (!given.getOrDefault(Knob.STROKES, KnobReader.NONE).equals(KnobReader.NONE)) {
      given.remove(Knob.HAND); // the hand speed follows
    }
    given.putIfAbsent(form.pace(), ""); // the form is chosen, even where nothing is set
    return given;
  }

  private static boolean isUsual(Knob knob, String text, Map<Knob, Double> usual) {
    try {
      return usual.containsKey(knob) && LABELS.number(knob, text) == usual.get(knob);
    } catch (Refusal e) {
      return false; // the reader says what is wrong with it
    }
  }

  /** Doubts about what the numbers say as they were typed. */
  public List<Doubt> doubts() {
    String text = text(Knob.POWER_PCT);
    return text.isEmpty() || inWatts(text) ? List.of() : Plausibility.aboutTypedShare(text);
  }

  private boolean inWatts(String power) {
    return power.toLowerCase(Locale.ROOT).endsWith("w")
        || powerUnit.equals("W") && !power.endsWith("%");
  }

  private String withUnit(Knob knob, String text) {
    String unit = knob == Knob.POWER_PCT ? powerUnit : knob.unit();
    return knob.isNumber() && Character.isDigit(text.charAt(text.length() - 1))
        ? text + unit
        : text;
  }
}
