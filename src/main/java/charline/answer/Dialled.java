package charline.answer;

import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.trial.Rig;
import charline.window.Strokes;
import java.time.OffsetDateTime;

/**
 * One setting whose risk is asked for.
 *
 * @param rig that it is dialled on
 * @param settings all that is dialled
 * @param at moment whose power checks count
 * @param passes 1 or more
 * @param strokes how the work is covered; a patch is a single stroke
 */
public record Dialled(Rig rig, Settings settings, OffsetDateTime at, int passes, Strokes strokes) {
  /** What one pass does. */
  public Exposure exposure() {
    return Exposure.of(
        rig.emission(), rig.deliveredWatts(settings.power(), settings.pulses(), at), settings);
  }

  /** The same setting with the work covered otherwise. */
  Dialled with(Strokes other) {
    return new Dialled(rig, settings, at, passes, other);
  }
}
