package charline.trial;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Settings as one number a knob, each in the knob's unit, and back. */
public final class KnobValues {
  private KnobValues() {}

  /** The number of every knob that these settings have; the others are absent. */
  public static Map<Knob, Double> of(Settings settings) {
    Map<Knob, Double> values = new EnumMap<>(Knob.class);
    PowerSetting power = settings.power();
    values.put(
        power.unit() == PowerSetting.Unit.PERCENT ? Knob.POWER_PCT : Knob.POWER_W, power.value());
    values.putAll(of(settings.form()));
    values.put(Knob.SPOT, settings.spot().diameterMillimetres());
    settings
        .pulses()
        .ifPresent(
            pulses -> {
              values.put(Knob.RATE, pulses.repetitionKilohertz());
              pulses.durationNanoseconds().ifPresent(ns -> values.put(Knob.PULSE, ns));
            });
    return values;
  }

  private static Map<Knob, Double> of(DoseForm form) {
    if (form instanceof LineScan scan) {
      return Map.of(
          Knob.SCAN, scan.spotSpeedMillimetresPerSecond(),
          Knob.SPACING, scan.lineSpacingMillimetres());
    }
    if (form instanceof TimedArea timed) {
      return Map.of(Knob.AREA, timed.areaSquareCentimetres(), Knob.SECONDS, timed.secondsPerPass());
    }
    HandPass hand = (HandPass) form;
    return Map.of(
        Knob.HAND, hand.handSpeedMillimetresPerSecond(), Knob.WIDTH, hand.scanWidthMillimetres());
  }

  /** The usual settings of a rig, as far as it has any. */
  public static Map<Knob, Double> usualOf(Rig rig) {
    Map<Knob, Double> usual = new EnumMap<>(Knob.class);
    rig.spotMillimetres().ifPresent(v -> usual.put(Knob.SPOT, v));
    rig.repetitionKilohertz().ifPresent(v -> usual.put(Knob.RATE, v));
    rig.pulseNanoseconds().ifPresent(v -> usual.put(Knob.PULSE, v));
    rig.scanWidthMillimetres().ifPresent(v -> usual.put(Knob.WIDTH, v));
    return usual;
  }

  /**
   * The settings that these numbers are.
   *
   * @param values one power, one pair of {@link DoseKnobs}, a spot, and of a pulsed source the rate
   * @param definition what the spot diameter means
   */
  public static Settings settings(Map<Knob, Double> values, SpotDefinition definition) {
    PowerSetting power =
        values.containsKey(Knob.POWER_PCT)
            ? PowerSetting.percent(values.get(Knob.POWER_PCT))
            : PowerSetting.watts(values.get(Knob.POWER_W));
    Double pulse = values.get(Knob.PULSE);
    Optional<Pulses> pulses =
        Optional.ofNullable(values.get(Knob.RATE))
            .map(
                rate ->
                    new Pulses(
                        rate, pulse == null ? OptionalDouble.empty() : OptionalDouble.of(pulse)));
    return new Settings(power, form(values), new Spot(values.get(Knob.SPOT), definition), pulses);
  }

  private static DoseForm form(Map<Knob, Double> values) {
    for (DoseKnobs pair : DoseKnobs.values()) {
      if (values.containsKey(pair.pace())) {
        return pair.form(values.get(pair.pace()), values.get(pair.across()));
      }
    }
    throw new IllegalArgumentException("no dose form in " + values);
  }
}
