package charline.wording;

import charline.exposure.Settings;
import charline.trial.Knob;
import charline.trial.KnobValues;
import java.util.List;
import java.util.Map;

/** The settings of one pass, with the keys of a trial sheet. */
public final class SettingsJson {
  private static final List<Knob> KNOBS =
      List.of(
          Knob.POWER_PCT,
          Knob.POWER_W,
          Knob.RATE,
          Knob.PULSE,
          Knob.SPOT,
          Knob.SCAN,
          Knob.SPACING,
          Knob.WIDTH,
          Knob.HAND,
          Knob.AREA,
          Knob.SECONDS);

  private SettingsJson() {}

  /** Puts the settings; a knob that they do not have is null. */
  public static Json put(Json json, Settings settings) {
    Map<Knob, Double> values = KnobValues.of(settings);
    KNOBS.forEach(knob -> json.put(knob.column(), values.get(knob)));
    return json;
  }
}
