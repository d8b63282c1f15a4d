package charline.trial;

import charline.exposure.Figure;
import charline.exposure.Head;
import charline.exposure.TimedStrokes;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a pass was made, beside its settings. All of it may be unknown.
 *
 * @param head how the head drew, and how far it was
 * @param conditions where on the wood, how warm and wet
 * @param strokes strokes that were timed, from which the hand speed follows
 */
public record Circumstances(Head head, Conditions conditions, Optional<TimedStrokes> strokes) {
  /** Of which nothing is known. */
  public static final Circumstances UNKNOWN =
      new Circumstances(Head.UNKNOWN, Conditions.UNKNOWN, Optional.empty());

  /** What is known, by knob: a number in the knob's unit, a truth or a word; the rest is absent. */
  public Map<Knob, Object> values() {
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    head.figure().ifPresent(figure -> values.put(Knob.FIGURE, figure.word()));
    head.linesPerSecond().ifPresent(n -> values.put(Knob.LINES, n));
    head.standOffMillimetres().ifPresent(mm -> values.put(Knob.STAND_OFF, mm));
    head.defocusMillimetres().ifPresent(mm -> values.put(Knob.DEFOCUS, mm));
    conditions.restSeconds().ifPresent(s -> values.put(Knob.REST, s));
    conditions.place().ifPresent(place -> values.put(Knob.PLACE, place.word()));
    conditions.part().ifPresent(part -> values.put(Knob.WOOD_PART, part.word()));
    conditions.wetted().ifPresent(yes -> values.put(Knob.WETTED, yes));
    conditions.air().ifPresent(yes -> values.put(Knob.AIR, yes));
    conditions.extraction().ifPresent(yes -> values.put(Knob.EXTRACTION, yes));
    conditions.temperatureCelsius().ifPresent(c -> values.put(Knob.TEMPERATURE, c));
    strokes.ifPresent(
        timed -> {
          values.put(Knob.STROKES, TimedStrokes.text(timed.seconds()));
          values.put(Knob.STROKE, timed.lengthMillimetres());
        });
    return values;
  }

  /** What such values say; knobs that are no circumstances are passed over. */
  public static Circumstances of(Map<Knob, Object> values) {
    return new Circumstances(
        new Head(
            word(values, Knob.FIGURE).map(Figure::ofWord),
            number(values, Knob.LINES),
            number(values, Knob.STAND_OFF),
            number(values, Knob.DEFOCUS)),
        new Conditions(
            number(values, Knob.REST),
            word(values, Knob.PLACE).map(Place::ofWord),
            word(values, Knob.WOOD_PART).map(WoodPart::ofWord),
            truth(values, Knob.WETTED),
            truth(values, Knob.AIR),
            truth(values, Knob.EXTRACTION),
            number(values, Knob.TEMPERATURE)),
        word(values, Knob.STROKES)
            .map(
                times ->
                    new TimedStrokes((Double) values.get(Knob.STROKE), TimedStrokes.times(times))));
  }

  private static Optional<String> word(Map<Knob, Object> values, Knob knob) {
    return Optional.ofNullable((String) values.get(knob));
  }

  private static Optional<Boolean> truth(Map<Knob, Object> values, Knob knob) {
    return Optional.ofNullable((Boolean) values.get(knob));
  }

  private static OptionalDouble number(Map<Knob, Object> values, Knob knob) {
    Double value = (Double) values.get(knob);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
