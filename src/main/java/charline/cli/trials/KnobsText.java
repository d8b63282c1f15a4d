package charline.cli.trials;

import charline.answer.FixedKnobs;
import charline.cli.command.TypedValues;
import charline.log.reference.Nearest;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Fixed knobs as typed: {@code spot=0.6mm,rep=40kHz,width=60mm}. */
final class KnobsText {
  private static final Map<String, Quantity> KNOWN = new LinkedHashMap<>();

  static {
    KNOWN.put("spot", Quantity.LENGTH);
    KNOWN.put("rep", Quantity.RATE);
    KNOWN.put("pulse", Quantity.PULSE_DURATION);
    KNOWN.put("width", Quantity.LENGTH);
    KNOWN.put("spacing", Quantity.LENGTH);
  }

  private KnobsText() {}

  /**
   * @param text what was typed, or null for nothing
   */
  static FixedKnobs read(String text) {
    Map<String, Double> values = new LinkedHashMap<>();
    for (String part : text == null ? new String[0] : text.split(",")) {
      String[] sides = part.split("=", 2);
      String knob = sides[0].strip();
      if (sides.length < 2 || !KNOWN.containsKey(knob)) {
        List<String> near = Nearest.to(knob, KNOWN.keySet());
        throw TypedValues.refused(
            "--at",
            "knobs must read like spot=0.6mm,rep=40kHz,width=60mm, not \"%s\"; known are %s%s."
                .formatted(
                    part.strip(),
                    String.join(", ", KNOWN.keySet()),
                    near.isEmpty() ? "" : " (did you mean " + near.get(0) + "?)"));
      }
      double value = TypedValues.measure("--at " + knob, sides[1], KNOWN.get(knob));
      values.put(knob, Invariant.positive("--at " + knob, value, KNOWN.get(knob).base()));
    }
    if (values.containsKey("width") && values.containsKey("spacing")) {
      throw TypedValues.refused(
          "--at", "give width (hand speed) or spacing (scan speed), not both.");
    }
    return new FixedKnobs(
        value(values, "spot"),
        value(values, "rep"),
        value(values, "pulse"),
        value(values, "width"),
        value(values, "spacing"));
  }

  private static OptionalDouble value(Map<String, Double> values, String knob) {
    return values.containsKey(knob) ? OptionalDouble.of(values.get(knob)) : OptionalDouble.empty();
  }
}
