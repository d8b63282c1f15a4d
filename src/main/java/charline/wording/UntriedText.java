package charline.wording;

import charline.quantity.Figures;
import charline.trial.Knob;
import charline.window.TriedKnobs;
import charline.window.UntriedKnob;
import java.util.List;
import java.util.stream.Collectors;

/** Knobs that stand where no trial had them, in words and as JSON. */
public final class UntriedText {
  /** In the order in which a person reads them. */
  private static final List<Knob> KNOBS =
      List.of(Knob.SPOT, Knob.RATE, Knob.PULSE, Knob.WIDTH, Knob.HAND, Knob.SPACING, Knob.SCAN);

  private UntriedText() {}

  /** "a pulse duration of 350 ns (tried: 100 ns) or a spot diameter of 1 mm (tried: 0.5 mm)". */
  public static String of(List<UntriedKnob> knobs) {
    return knobs.stream().map(UntriedText::of).collect(Collectors.joining(" or "));
  }

  private static String of(UntriedKnob knob) {
    return "a %s of %s (tried: %s)"
        .formatted(
            knob.knob().noun(),
            Figures.three(knob.value()) + " " + knob.knob().unit(),
            tried(knob));
  }

  private static String tried(UntriedKnob knob) {
    if (knob.tried().isEmpty()) {
      return "none";
    }
    String between = knob.knob() == Knob.PULSE ? ", " : " to ";
    return knob.tried().stream().map(Figures::three).collect(Collectors.joining(between))
        + " "
        + knob.knob().unit();
  }

  /** What was tried in each knob: its lowest and highest value, or the one that all had. */
  static Json json(TriedKnobs tried) {
    Json json = new Json();
    KNOBS.stream()
        .filter(knob -> !tried.tried(knob).isEmpty())
        .forEach(knob -> json.put(knob.column(), tried.tried(knob)));
    return json;
  }

  static Json json(UntriedKnob knob) {
    return new Json()
        .put("knob", knob.knob().column())
        .put("value", knob.value())
        .put("tried", knob.tried());
  }
}
