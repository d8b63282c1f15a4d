package charline.wording;

import static charline.quantity.Figures.plain;

import charline.exposure.Figure;
import charline.exposure.Head;
import charline.exposure.TimedStrokes;
import charline.quantity.Figures;
import charline.trial.Circumstances;
import charline.trial.Conditions;
import charline.trial.Knob;
import charline.trial.Manner;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Rig;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** How a pass was made beside its settings, in the words of the bench. */
public final class CircumstancesText {
  private static final double ROUNDING = 1e-9;

  private CircumstancesText() {}

  /** What is known of a patch, by what it is about, for a list of facts; empty if nothing is. */
  public static Map<String, String> facts(Patch patch) {
    Circumstances known = patch.circumstances();
    Map<String, String> facts = new LinkedHashMap<>();
    put(facts, "figure", figure(known.head()));
    put(facts, "distance", distance(patch));
    put(facts, "place", place(known.conditions()));
    put(facts, "worked", worked(known.conditions()));
    known.strokes().ifPresent(strokes -> facts.put("strokes", strokes(strokes)));
    return facts;
  }

  /** The usual circumstances of a rig, likewise. */
  public static Map<String, String> facts(Rig rig) {
    Map<String, String> facts = new LinkedHashMap<>();
    put(facts, "usual figure", figure(rig.usual().head()));
    put(facts, "usual distance", List.copyOf(distances(rig.usual().head())));
    put(facts, "usually", worked(rig.usual().conditions()));
    List<String> optics = new ArrayList<>();
    plain(rig.optics().focusSpotMillimetres(), "mm").map("spot "::concat).ifPresent(optics::add);
    rig.optics().beamQuality().ifPresent(m2 -> optics.add("beam quality M2 " + plain(m2)));
    put(facts, "at focus", optics);
    return facts;
  }

  /** All in one line, such as "circle 100/s, arris, wetted"; blank if nothing is known. */
  public static String brief(Circumstances known) {
    List<String> words = new ArrayList<>();
    Map<Knob, Object> values = known.values();
    Knob.CIRCUMSTANCES.stream()
        .filter(values::containsKey)
        .forEach(knob -> brief(knob, values.get(knob)).ifPresent(words::add));
    return String.join(", ", words);
  }

  /** "circle, on an arris" where either is worth a word; blank on the face with no figure. */
  public static String manner(Manner manner) {
    List<String> words = new ArrayList<>();
    manner.figure().map(Figure::word).ifPresent(words::add);
    Optional.of(manner.place()).filter(p -> p != Place.FACE).map(Place::word).ifPresent(words::add);
    return String.join(", ", words);
  }

  private static Optional<String> brief(Knob knob, Object value) {
    if (knob == Knob.STROKES || knob == Knob.STROKE) {
      return Optional.empty(); // the hand speed says it
    }
    if (value instanceof Double number) {
      String named = knob == Knob.LINES || knob == Knob.TEMPERATURE ? "" : knob.key() + " ";
      String blank = knob == Knob.LINES ? "" : " ";
      return Optional.of(named + plain(number) + blank + knob.unit());
    }
    if (value instanceof Boolean yes) {
      return Optional.of((yes ? "" : knob == Knob.WETTED ? "not " : "no ") + knob.noun());
    }
    return Optional.of(value.toString());
  }

  private static void put(Map<String, String> facts, String name, List<String> words) {
    if (!words.isEmpty()) {
      facts.put(name, String.join(", ", words));
    }
  }

  private static List<String> figure(Head head) {
    List<String> words = new ArrayList<>();
    head.figure().map(Figure::word).ifPresent(words::add);
    head.linesPerSecond().ifPresent(n -> words.add(plain(n) + rate(head.figure())));
    return words;
  }

  private static String rate(Optional<Figure> figure) {
    return figure.filter(Figure.CIRCLE::equals).isPresent() ? " turns/s" : " lines/s";
  }

  private static List<String> distances(Head head) {
    List<String> words = new ArrayList<>();
    plain(head.standOffMillimetres(), "mm").map("stand-off "::concat).ifPresent(words::add);
    plain(head.defocusMillimetres(), "mm").map("defocus "::concat).ifPresent(words::add);
    return words;
  }

  /** With whether the defocus makes the spot, or is only noted. */
  private static List<String> distance(Patch patch) {
    Head head = patch.circumstances().head();
    List<String> words = distances(head);
    head.defocusMillimetres()
        .ifPresent(
            defocus -> {
              double spot = patch.settings().spot().oneOverESquaredMillimetres();
              OptionalDouble made =
                  patch
                      .rig()
                      .focus()
                      .map(focus -> focus.at(defocus).oneOverESquaredMillimetres())
                      .map(OptionalDouble::of)
                      .orElse(OptionalDouble.empty());
              if (made.isEmpty()) {
                words.add("which is only noted, as the rig's optics are not known");
              } else if (Math.abs(made.getAsDouble() / spot - 1) < ROUNDING) {
                words.add("which makes the spot");
              } else {
                words.add(
                    "which would make a spot of %s mm (1/e2)"
                        .formatted(Figures.three(made.getAsDouble())));
              }
            });
    return words;
  }

  private static List<String> place(Conditions conditions) {
    List<String> words = new ArrayList<>();
    conditions.place().map(Place::word).ifPresent(words::add);
    conditions.part().map(part -> part.word() + "wood").ifPresent(words::add);
    return words;
  }

  private static List<String> worked(Conditions conditions) {
    List<String> words = new ArrayList<>();
    plain(conditions.restSeconds(), "s").ifPresent(s -> words.add(s + " rest between passes"));
    conditions.wetted().ifPresent(yes -> words.add(yes ? "wetted" : "not wetted"));
    conditions.air().ifPresent(yes -> words.add(yes ? "air assist" : "no air assist"));
    conditions.extraction().ifPresent(yes -> words.add(yes ? "extraction" : "no extraction"));
    plain(conditions.temperatureCelsius(), "°C").map("wood at "::concat).ifPresent(words::add);
    return words;
  }

  /**
   * "3 of 300 mm in 4.1, 3.9, 4.3 s; dose from stroke to stroke varies from stroke to stroke by
   * 4.88 %".
   */
  private static String strokes(TimedStrokes strokes) {
    OptionalDouble spread = strokes.spread();
    return "%d of %s mm in %s s%s"
        .formatted(
            strokes.seconds().size(),
            plain(strokes.lengthMillimetres()),
            strokes.seconds().stream().map(Figures::plain).collect(Collectors.joining(", ")),
            spread.isEmpty()
                ? ""
                : "; the dose varies from stroke to stroke by %s %% (standard deviation)"
                    .formatted(Figures.three(100 * spread.getAsDouble())));
  }
}
