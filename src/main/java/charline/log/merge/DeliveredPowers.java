package charline.log.merge;

import charline.exposure.Settings;
import charline.log.Logbook;
import charline.log.SettingsColumns;
import charline.trial.Rig;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * Power on the work, in W, of each patch that counts. It follows from the rig and its power checks,
 * so that a new check or another rating moves patches that nobody touched.
 */
final class DeliveredPowers {
  private final Map<UUID, Double> watts;

  private DeliveredPowers(Map<UUID, Double> watts) {
    this.watts = watts;
  }

  /** As the log has them now. */
  static DeliveredPowers of(Logbook log) {
    Map<UUID, Rig> byId = new HashMap<>();
    log.rigs().forEach(rig -> byId.put(rig.id(), rig));
    Map<UUID, Double> watts = new HashMap<>();
    log.database()
        .query(
            """
            SELECT * FROM main.patch WHERE voided_why IS NULL
            """,
            row -> {
              Settings settings = SettingsColumns.read(row);
              double delivered =
                  Optional.ofNullable(byId.get(row.id("rig_id")))
                      .orElseThrow()
                      .deliveredWatts(settings.power(), settings.pulses(), row.moment("burned_at"));
              return watts.put(row.id("id"), delivered);
            });
    return new DeliveredPowers(watts);
  }

  /** These, and those of another log for patches that are not here yet. */
  DeliveredPowers or(DeliveredPowers other) {
    Map<UUID, Double> all = new HashMap<>(other.watts);
    all.putAll(watts);
    return new DeliveredPowers(all);
  }

  /** How many patches of both moments have another power at the later one. */
  int changedTo(DeliveredPowers later) {
    return (int)
        watts.entrySet().stream()
            .filter(
                patch ->
                    later.watts.containsKey(patch.getKey())
                        && !Objects.equals(later.watts.get(patch.getKey()), patch.getValue()))
            .count();
  }
}
