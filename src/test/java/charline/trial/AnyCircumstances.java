package charline.trial;

import charline.exposure.DoseForm;
import charline.exposure.Figure;
import charline.exposure.HandPass;
import charline.exposure.TimedStrokes;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Invented circumstances, each known or not by chance. */
public final class AnyCircumstances {
  private AnyCircumstances() {}

  /** Circumstances of a pass; strokes that were timed agree with its hand speed. */
  public static Circumstances of(DoseForm form, Random random) {
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    for (Knob knob : Knob.CIRCUMSTANCES) {
      if (random.nextBoolean()) {
        values.put(knob, value(knob, random));
      }
    }
    values.remove(Knob.STROKES);
    values.remove(Knob.STROKE);
    if (form instanceof HandPass hand && random.nextBoolean()) {
      List<Double> times = List.of(3 + random.nextDouble(), 3 + random.nextInt(10) / 10.0);
      double mean = (times.get(0) + times.get(1)) / 2;
      values.put(Knob.STROKES, TimedStrokes.text(times));
      values.put(Knob.STROKE, mean * hand.handSpeedMillimetresPerSecond());
    }
    return Circumstances.of(values);
  }

  /** Usual circumstances of a rig. */
  public static Circumstances ofRig(Random random) {
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    for (Knob knob : Knob.USUAL_OF_RIG) {
      if (random.nextBoolean()) {
        values.put(knob, value(knob, random));
      }
    }
    return Circumstances.of(values);
  }

  private static Object value(Knob knob, Random random) {
    if (knob.isNumber()) {
      double size = 1 + 40 * random.nextDouble();
      return knob == Knob.DEFOCUS && random.nextBoolean() ? -size : size;
    }
    if (knob.isYesOrNo()) {
      return random.nextBoolean();
    }
    List<String> words =
        knob == Knob.FIGURE
            ? List.of(Figure.CIRCLE.word(), Figure.LINE.word(), "figure-eight", "=star")
            : knob == Knob.STROKES ? List.of("3 4") : knob.answers();
    return words.get(random.nextInt(words.size()));
  }
}
