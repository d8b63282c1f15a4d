package charline.wording;

import static charline.quantity.Figures.three;

import charline.model.Estimate;
import charline.model.Event;
import charline.model.ModelFit;
import charline.model.WayEffect;
import charline.model.way.Coating;
import charline.model.way.Factor;
import charline.model.way.Trait;
import charline.model.way.Warmth;
import charline.model.way.Way;
import charline.model.way.WayDesign;
import charline.model.way.WaysTried;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Which way of working an answer is for, and what each difference was found to count. */
public final class WayText {
  private WayText() {}

  /** One paragraph on both models, where the trials were made in more than one way. */
  public static Optional<String> of(
      Optional<ModelFit> charring, Optional<ModelFit> clearing, List<Patch> patches) {
    return of(Stream.of(charring, clearing).flatMap(Optional::stream).toList(), patches);
  }

  /** The same on one model. */
  public static Optional<String> of(ModelFit fit, List<Patch> patches) {
    return of(List.of(fit), patches);
  }

  private static Optional<String> of(List<ModelFit> fits, List<Patch> patches) {
    List<String> found = new ArrayList<>();
    fits.forEach(fit -> coatEffects(fit, found));
    found.addAll(shifts(fits));
    Optional<String> omitted = fits.stream().findFirst().flatMap(fit -> leftOut(fit.ways()));
    if (found.isEmpty()) {
      return omitted;
    }
    ModelFit last = fits.get(fits.size() - 1);
    StringBuilder text = new StringBuilder();
    text.append(
        "For %s. Found in these trials: %s.".formatted(way(last), String.join("; ", found)));
    if (last.ways().has(Trait.TONE)) {
      text.append(' ').append(counted(patches));
    }
    omitted.ifPresent(words -> text.append(' ').append(words));
    return Optional.of(text.toString());
  }

  private static void coatEffects(ModelFit fit, List<String> found) {
    for (WayEffect effect : fit.wayEffects()) {
      if (effect.trait() == Trait.TONE) {
        found.add("pale takes %s the dose of dark".formatted(times(effect.factor())));
      } else if (effect.trait() == Trait.THICKNESS) {
        found.add("twice as thick takes %s the dose".formatted(times(effect.factor())));
      }
    }
  }

  /** What differs, each with what it does to char and to clearing. */
  private static List<String> shifts(List<ModelFit> fits) {
    Map<String, List<String>> byPair = new LinkedHashMap<>();
    for (ModelFit fit : fits) {
      String event = fit.event() == Event.CHAR ? "char" : "clearing";
      for (WayEffect effect : fit.wayEffects()) {
        if (!effect.trait().ofCoat()) {
          byPair
              .computeIfAbsent(pair(effect, fit.way()), pair -> new ArrayList<>())
              .add("%s at %s the dose".formatted(event, times(effect.factor())));
        }
      }
    }
    return byPair.entrySet().stream()
        .map(e -> e.getKey() + ": " + String.join(", ", e.getValue()))
        .toList();
  }

  /** "circle against line". */
  private static String pair(WayEffect effect, Way own) {
    return switch (effect.trait()) {
      case PULSE -> "pulses twice as long";
      case WARMTH -> "cooled wood against hot";
      case WETTED -> "wetted against dry";
      case MOISTURE -> "wood five points moister";
      default ->
          "%s against %s"
              .formatted(
                  named(effect.trait(), effect.level().orElseThrow()),
                  named(effect.trait(), name(effect.trait(), own)));
    };
  }

  private static String name(Trait trait, Way way) {
    return switch (trait) {
      case RIG -> way.rig().orElse("");
      case FIGURE -> way.figure().map(figure -> figure.word()).orElse(Factor.NOT_NOTED);
      default -> way.placeOrFace().word();
    };
  }

  private static String named(Trait trait, String level) {
    if (level.equals(Factor.OTHERS)) {
      return "other " + trait.word() + "s";
    }
    return trait == Trait.RIG
        ? "rig " + level
        : level.equals(Factor.NOT_NOTED) ? "no figure noted" : level;
  }

  /** ", figure circle": what belongs to the fixed knobs of an answer; blank where none is noted. */
  public static String fixed(Optional<ModelFit> fit) {
    return fit.map(f -> figure(f.way())).orElse("");
  }

  static String figure(Way way) {
    return way.figure().map(f -> ", figure " + f.word()).orElse("");
  }

  /** "rig heron, figure circle, place arris": what was asked, as far as it goes by name. */
  public static String asked(Way way) {
    return WaysTried.words(way);
  }

  private static String times(Estimate factor) {
    return "%s times (%s)"
        .formatted(three(factor.median()), Figures.bounds(factor.low(), factor.high()));
  }

  /** "a dark coat of 90 um, figure circle", as far as the model looks at it. */
  private static String way(ModelFit fit) {
    WayDesign ways = fit.ways();
    Way way = ways.way();
    List<String> words = new ArrayList<>();
    if (ways.has(Trait.TONE) || ways.has(Trait.THICKNESS)) {
      words.add(coat(ways));
    }
    if (ways.has(Trait.RIG)) {
      words.add("rig " + way.rig().orElseThrow());
    }
    if (ways.has(Trait.FIGURE)) {
      words.add(way.figure().map(figure -> "figure " + figure.word()).orElse("no figure noted"));
    }
    if (ways.has(Trait.PLACE)) {
      words.add("place " + way.placeOrFace().word());
    }
    if (ways.has(Trait.PULSE) && way.pulseNanoseconds().isPresent()) {
      words.add("pulses of %s ns".formatted(three(way.pulseNanoseconds().getAsDouble())));
    }
    if (ways.has(Trait.WARMTH)) {
      words.add(
          way.warmth()
              .map(warmth -> warmth == Warmth.HOT ? "wood still hot" : "wood left to cool")
              .orElse("rests in the middle"));
    }
    if (ways.has(Trait.WETTED)) {
      words.add(way.wetted().orElse(false) ? "the finish wetted" : "the finish dry");
    }
    if (ways.has(Trait.MOISTURE)) {
      words.add(
          way.moisturePercent().isPresent()
              ? "wood of %s %% moisture".formatted(three(way.moisturePercent().getAsDouble()))
              : "wood of middling moisture");
    }
    return String.join(", ", words);
  }

  private static String coat(WayDesign ways) {
    Coating coat = ways.way().coat();
    String tone =
        ways.has(Trait.TONE) ? "a " + coat.tone().orElseThrow().word() + " coat" : "a coat";
    return ways.has(Trait.THICKNESS)
        ? tone + " of %s um".formatted(three(coat.thicknessMicrometres().getAsDouble()))
        : tone;
  }

  private static String counted(List<Patch> patches) {
    List<String> parts = new ArrayList<>();
    for (Tone tone : Tone.values()) {
      long count =
          patches.stream().filter(p -> p.finish().tone().equals(Optional.of(tone))).count();
      if (count > 0) {
        parts.add(count + " " + tone.word());
      }
    }
    long unknown = patches.stream().filter(p -> p.finish().tone().isEmpty()).count();
    return "Patches: %s%s."
        .formatted(
            String.join(", ", parts),
            unknown == 0 ? "" : "; %d of unknown tone counted as mid".formatted(unknown));
  }

  /** What else differs between the trials, and why it has no shift of its own. */
  private static Optional<String> leftOut(WayDesign ways) {
    List<String> sentences = new ArrayList<>();
    reasons(ways, WayDesign.Why.GOES_WITH_OTHERS)
        .ifPresent(
            traits ->
                sentences.add(
                    "In these trials the %s always changes together with something else that is counted, so the two are one shift."
                        .formatted(traits)));
    reasons(ways, WayDesign.Why.TOO_MUCH_DIFFERS)
        .ifPresent(
            traits ->
                sentences.add(
                    "These trials differ in so much that the %s is not counted; burn more patches in one way."
                        .formatted(traits)));
    return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", sentences));
  }

  private static Optional<String> reasons(WayDesign ways, WayDesign.Why why) {
    List<String> words =
        ways.leftOut().stream()
            .filter(omitted -> omitted.why() == why)
            .map(omitted -> omitted.trait().word())
            .toList();
    return words.isEmpty() ? Optional.empty() : Optional.of(String.join(" and the ", words));
  }

  /** Rows of a table of parameters: name, estimate and what it is. */
  static void rows(ModelFit fit, Row row) {
    for (WayEffect effect : fit.wayEffects()) {
      switch (effect.trait()) {
        case TONE -> row.add("pale over dark", effect.factor(), "times the dose, mid half-way");
        case THICKNESS -> row.add("thickness", effect.weight(), "weight of ln coat thickness");
        case PULSE -> row.add("pulse duration", effect.weight(), "weight of ln pulse duration");
        case WARMTH -> row.add("cooled over hot", effect.factor(), "times the dose");
        case WETTED -> row.add("wetted over dry", effect.factor(), "times the dose");
        case MOISTURE -> row.add("moisture", effect.factor(), "times the dose for 5 points more");
        default ->
            row.add(
                named(effect.trait(), effect.level().orElseThrow()),
                effect.factor(),
                "times the dose of " + named(effect.trait(), name(effect.trait(), fit.way())));
      }
    }
  }

  /** Takes one row. */
  interface Row {
    void add(String name, Estimate estimate, String what);
  }

  /** The coat and its effects; a part that is unknown, or alike in all coats, is null. */
  public static Json coatJson(ModelFit clearing) {
    return new Json()
        .put("tone", clearing.coat().tone().map(Tone::word))
        .put("thickness_um", clearing.coat().thicknessMicrometres())
        .put(
            "pale_over_dark",
            effect(clearing, Trait.TONE).map(e -> e.factor()).map(WindowJson::estimate))
        .put(
            "thickness_weight",
            effect(clearing, Trait.THICKNESS).map(e -> e.weight()).map(WindowJson::estimate));
  }

  private static Optional<WayEffect> effect(ModelFit clearing, Trait trait) {
    return clearing.wayEffects().stream().filter(e -> e.trait() == trait).findAny();
  }

  /** The shifts of one model but for those of the coat, each as a factor on dose. */
  static List<Json> shiftsJson(ModelFit fit) {
    return fit.wayEffects().stream()
        .filter(effect -> !effect.trait().ofCoat())
        .map(
            effect ->
                new Json()
                    .put("of", effect.trait().word())
                    .put("level", effect.level())
                    .put("against", effect.level().map(level -> name(effect.trait(), fit.way())))
                    .put("dose_factor", WindowJson.estimate(effect.factor())))
        .toList();
  }

  /** In what else the trials differ. */
  static List<Json> leftOutJson(ModelFit fit) {
    return fit.ways().leftOut().stream()
        .map(
            omitted ->
                new Json()
                    .put("of", omitted.trait().word())
                    .put(
                        "because",
                        omitted.why() == WayDesign.Why.GOES_WITH_OTHERS
                            ? "it goes with others"
                            : "too much differs"))
        .toList();
  }
}
