package charline.window;

import charline.exposure.Exposure;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * A rig as it stands for the work: what stays fixed while power, speed and passes vary.
 *
 * @param rig the rig
 * @param at moment whose power check counts
 * @param spot spot on the work
 * @param pulses repetition rate and pulse duration of a pulsed rig, empty for a continuous one
 * @param speed the speed knob
 */
public record Bench(
    Rig rig, OffsetDateTime at, Spot spot, Optional<Pulses> pulses, SpeedKnob speed) {

  /** Power delivered at 1 % of the dial, in W. */
  public double wattsPerPercent() {
    return rig.deliveredWatts(PowerSetting.percent(1), at);
  }

  /** The settings at a power and a speed. */
  public Settings settings(double powerPercent, double speedMillimetresPerSecond) {
    return new Settings(
        PowerSetting.percent(powerPercent), speed.at(speedMillimetresPerSecond), spot, pulses);
  }

  /** The exposure of one pass at a power and a speed. */
  public Exposure exposure(double powerPercent, double speedMillimetresPerSecond) {
    return Exposure.of(
        rig.emission(),
        powerPercent * wattsPerPercent(),
        settings(powerPercent, speedMillimetresPerSecond));
  }
}
