package charline.wording;

import charline.exposure.TimedStrokes;
import charline.trial.Circumstances;
import charline.trial.Knob;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** How a pass was made, with the keys of a trial sheet. */
public final class CircumstancesJson {
  private CircumstancesJson() {}

  /** Puts the values of these knobs; what is not known is null. */
  public static Json put(Json json, List<Knob> knobs, Circumstances circumstances) {
    Map<Knob, Object> values = circumstances.values();
    knobs.forEach(
        knob ->
            json.put(
                knob.column(),
                knob == Knob.STROKES
                    ? circumstances.strokes().map(TimedStrokes::seconds)
                    : values.get(knob)));
    return json;
  }

  /** By how much the hand varied from stroke to stroke, in percent; null where it is not known. */
  public static Json putSpread(Json json, Circumstances circumstances) {
    OptionalDouble spread =
        circumstances.strokes().map(TimedStrokes::spread).orElse(OptionalDouble.empty());
    return json.put("stroke_spread_pct", spread.isPresent() ? 100 * spread.getAsDouble() : null);
  }
}
