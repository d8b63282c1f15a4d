package charline.trial;

import charline.exposure.PowerCurve;
import charline.quantity.Invariant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * A metered power.
 *
 * @param id permanent identity
 * @param at when it was metered
 * @param percent power setting, above 0 and up to 100
 * @param meteredWatts what the meter showed on the work, above 0
 * @param repetitionKilohertz repetition rate that it was metered at, empty where the rig's usual
 *     one was set
 * @param pulseNanoseconds pulse duration that it was metered at, likewise
 */
public record PowerCheck(
    UUID id,
    OffsetDateTime at,
    double percent,
    double meteredWatts,
    OptionalDouble repetitionKilohertz,
    OptionalDouble pulseNanoseconds) {
  public PowerCheck {
    Invariant.positive("Power setting", percent, "%");
    Invariant.within("Power setting", percent, 0, 100, "%");
    Invariant.positive("Metered power", meteredWatts, "W");
    repetitionKilohertz.ifPresent(f -> Invariant.positive("Repetition rate", f, "kHz"));
    pulseNanoseconds.ifPresent(t -> Invariant.positive("Pulse duration", t, "ns"));
  }

  /** A power metered with the rig's usual pulses, or with a continuous rig. */
  public PowerCheck(UUID id, OffsetDateTime at, double percent, double meteredWatts) {
    this(id, at, percent, meteredWatts, OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** The curve through checks in the order of metering; of two at one setting the later counts. */
  public static PowerCurve curve(List<PowerCheck> checks) {
    return PowerCurve.through(
        checks.stream().map(c -> new PowerCurve.Point(c.percent, c.meteredWatts)).toList());
  }

  /** Metered over nominal power. */
  public double factor(double ratedWatts) {
    return meteredWatts / (ratedWatts * percent / 100);
  }
}
