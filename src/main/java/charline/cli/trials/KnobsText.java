package charline.cli.trials;

import charline.answer.FixedKnobs;
import charline.cli.command.TypedValues;
import charline.log.reference.Nearest;
import charline.quantity.Invariant;
import charline.trial.Knob;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Fixed knobs as typed: {@code spot=0.6mm,rep=40kHz,width=60mm}. */
final class KnobsText {
  private static final List<Knob> KNOWN =
      List.of(Knob.SPOT, Knob.RATE, Knob.PULSE, Knob.WIDTH, Knob.SPACING);

  private KnobsText() {}

  /**
   * @param text what was typed, or null for nothing
   */
  static FixedKnobs read(String text) {
    Map<Knob, Double> values = new EnumMap<>(Knob.class);
    for (String part : text == null ? new String[0] : text.split(",")) {
      String[] sides = part.split("=", 2);
      String key = sides[0].strip();
      Knob knob = KNOWN.stream().filter(k -> k.key().equals(key)).findAny().orElse(null);
      if (sides.length < 2 || knob == null) {
        List<String> known = KNOWN.stream().map(Knob::key).toList();
        List<String> near = Nearest.to(key, known);
        throw TypedValues.refused(
            "--at",
            "knobs must read like spot=0.6mm,rep=40kHz,width=60mm, not \"%s\"; known are %s%s."
                .formatted(
                    part.strip(),
                    String.join(", ", known),
                    near.isEmpty() ? "" : " (did you mean " + near.get(0) + "?)"));
      }
      double value = TypedValues.measure("--at " + key, sides[1], knob.quantity());
      values.put(knob, Invariant.positive("--at " + key, value, knob.unit()));
    }
    if (values.containsKey(Knob.WIDTH) && values.containsKey(Knob.SPACING)) {
      throw TypedValues.refused(
          "--at", "give width (hand speed) or spacing (scan speed), not both.");
    }
    return new FixedKnobs(values);
  }
}
