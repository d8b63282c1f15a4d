package charline.trial;

import charline.quantity.Invariant;
import java.time.OffsetDateTime;
import java.util.UUID;

/**
 * A metered power.
 *
 * @param id permanent identity
 * @param at when it was metered
 * @param percent power setting, above 0 and up to 100
 * @param meteredWatts what the meter showed on the work, above 0
 */
public record PowerCheck(UUID id, OffsetDateTime at, double percent, double meteredWatts) {
  public PowerCheck {
    Invariant.positive("Power setting", percent, "%");
    Invariant.within("Power setting", percent, 0, 100, "%");
    Invariant.positive("Metered power", meteredWatts, "W");
  }

  /** Metered over nominal power. */
  public double factor(double ratedWatts) {
    return meteredWatts / (ratedWatts * percent / 100);
  }
}
