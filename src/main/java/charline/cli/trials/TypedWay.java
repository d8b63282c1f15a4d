package charline.cli.trials;

import charline.answer.Light;
import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.exposure.Emission;
import charline.exposure.Figure;
import charline.log.Logbook;
import charline.model.way.Coating;
import charline.model.way.Warmth;
import charline.model.way.Way;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.trial.Place;
import charline.trial.Tone;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A way of working as it was typed.
 *
 * @param values what was said, by word: rig, figure, light, tone, place, rest, wetted
 */
record TypedWay(Map<String, String> values) {
  private static final List<String> WORDS =
      List.of("rig", "figure", "light", "tone", "place", "rest", "wetted");

  TypedWay {
    values = Map.copyOf(values);
  }

  /** Reads {@code figure=line,rest=60s}. */
  static TypedWay read(String option, String typed) {
    Map<String, String> values = new LinkedHashMap<>();
    for (String part : typed.split(",")) {
      String[] sides = part.split("=", 2);
      String word = sides[0].strip().toLowerCase(Locale.ROOT);
      if (sides.length < 2 || sides[1].isBlank() || !WORDS.contains(word)) {
        throw TypedValues.refused(
            option,
            "a way is %s with its value, such as figure=line, not \"%s\"."
                .formatted(String.join(", ", WORDS), part.strip()));
      }
      values.put(word, sides[1].strip());
    }
    return new TypedWay(values);
  }

  /** A question about this way; what was not said stays as the question has it. */
  TrialQuestion of(TrialQuestion question, Logbook log) {
    Way way = question.way();
    way =
        said("tone")
            .map(Tone::ofWord)
            .map(
                tone ->
                    new Coating(Optional.of(tone), question.way().coat().thicknessMicrometres()))
            .map(way::with)
            .orElse(way);
    way = said("figure").map(Figure::ofWord).map(Optional::of).map(way::with).orElse(way);
    way = said("place").map(Place::ofWord).map(way::with).orElse(way);
    way = said("rest").map(TypedWay::warmth).map(way::with).orElse(way);
    way = said("wetted").map(TypedWay::yes).map(way::wetted).orElse(way);
    TrialQuestion asked = question.with(way);
    Optional<String> rig = said("rig");
    if (rig.isPresent()) {
      return asked.onRig(rig.get());
    }
    return said("light").map(TypedWay::emission).map(e -> asked.with(light(e, log))).orElse(asked);
  }

  private Optional<String> said(String word) {
    return Optional.ofNullable(values.get(word));
  }

  private static Warmth warmth(String text) {
    return Warmth.after(
        Invariant.notNegative("--rest", TypedValues.measure("--rest", text, Quantity.TIME), "s"));
  }

  private static boolean yes(String text) {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "yes" -> true;
      case "no" -> false;
      default ->
          throw TypedValues.refused(
              "--wetted", "it must be yes or no, not \"%s\".".formatted(text));
    };
  }

  private static Emission emission(String text) {
    return Stream.of(Emission.values())
        .filter(emission -> emission.word().equals(text.toLowerCase(Locale.ROOT)))
        .findAny()
        .orElseThrow(
            () ->
                TypedValues.refused(
                    "--light", "it must be pulsed or cw, not \"%s\".".formatted(text)));
  }

  /** The light of that kind that the log's rigs have. */
  private static Light light(Emission emission, Logbook log) {
    List<Light> lights =
        log.rigs().stream()
            .filter(rig -> rig.emission() == emission)
            .map(Light::of)
            .distinct()
            .toList();
    if (lights.size() != 1) {
      throw TypedValues.refused(
          "--light",
          lights.isEmpty()
              ? "the log has no rig whose light is %s.".formatted(emission.word())
              : "rigs whose light is %s differ in wavelength; name two rigs with --rig."
                  .formatted(emission.word()));
    }
    return lights.get(0);
  }
}
