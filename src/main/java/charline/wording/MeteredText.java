package charline.wording;

import charline.exposure.Pulses;
import charline.quantity.Figures;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the power on the work rests on. */
public final class MeteredText {
  private MeteredText() {}

  /**
   * "metered on 2026-06-01", with the pulses that it was metered at where they are others; empty
   * where the rig was never metered.
   */
  public static Optional<String> on(Rig rig, Optional<Pulses> pulses, OffsetDateTime moment) {
    List<PowerCheck> checks = rig.checksFor(pulses, moment);
    if (checks.isEmpty()) {
      return Optional.empty();
    }
    PowerCheck last = checks.get(checks.size() - 1);
    return Optional.of("metered on " + last.at().toLocalDate() + otherPulses(rig, last, pulses));
  }

  /** " at 60 kHz, not at 20 kHz"; blank where the power was metered as it is used. */
  public static String otherPulses(Rig rig, PowerCheck check, Optional<Pulses> pulses) {
    if (!rig.meteredOtherwise(check, pulses)) {
      return "";
    }
    Pulses used = pulses.orElseThrow();
    OptionalDouble rate = rig.repetitionOf(check);
    return rate.isPresent() && rate.getAsDouble() != used.repetitionKilohertz()
        ? " at %s kHz, not at %s kHz"
            .formatted(Figures.plain(rate.getAsDouble()), Figures.plain(used.repetitionKilohertz()))
        : " at %s ns, not at %s ns"
            .formatted(
                Figures.plain(rig.pulseOf(check).orElseThrow()),
                Figures.plain(used.durationNanoseconds().orElseThrow()));
  }
}
