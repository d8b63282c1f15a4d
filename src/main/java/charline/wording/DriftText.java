package charline.wording;

import charline.drift.Drift;
import charline.drift.Validity;
import charline.quantity.Figures;
import charline.trial.Caution;
import java.util.Optional;

/** Whether a rig still does what it did, in words. */
public final class DriftText {
  /** Where the rules of drift and validity come from, as a caution names it. */
  public static final String SOURCE = "common practice, no published source";

  private DriftText() {}

  /** What to do about a drift, in a sentence. */
  public static String advice(Drift.Shift shift) {
    return "Rig %s has drifted since %s: check the protective window, the spot and the meter, and burn a control patch before anything else."
        .formatted(shift.rig(), shift.since().toLocalDate());
  }

  /** Why a window must not be used any more; empty where no drift outdates it. */
  public static Optional<String> drifted(Validity validity) {
    return validity
        .drifted()
        .map(
            shift ->
                advice(shift) + " Trials from before then do not describe the rig as it is now.");
  }

  /** The same as the caution that comes before all others. */
  public static Optional<Caution> notValid(Validity validity) {
    return drifted(validity).map(why -> new Caution("Not valid", why, SOURCE));
  }

  /** What is watched. */
  public static String gauge(Drift.Gauge gauge) {
    return gauge instanceof Drift.ControlPatches controls
        ? "control patches of %s: passes to clear".formatted(controls.stratum().words())
        : "power checks: metered over nominal power";
  }

  /** A patch code, or "141 W at 50 %". */
  public static String name(Drift.Point point) {
    return point
        .patch()
        .or(
            () ->
                point
                    .check()
                    .map(
                        check ->
                            "%s W at %s %%"
                                .formatted(
                                    Figures.digits(check.meteredWatts(), 4),
                                    Figures.digits(check.percent(), 3))))
        .orElse("");
  }
}
