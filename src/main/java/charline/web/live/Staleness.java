package charline.web.live;

import charline.trial.Patch;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Codes of the patches in which an older answer differs from what the log holds now.
 *
 * @param missing recorded since, or brought back
 * @param changed read further or amended since
 * @param gone taken out since, or moved to another stratum
 */
public record Staleness(List<String> missing, List<String> changed, List<String> gone) {

  static Staleness of(List<Patch> then, List<Patch> now) {
    Map<UUID, Patch> before = byId(then);
    Map<UUID, Patch> after = byId(now);
    return new Staleness(
        codes(now.stream().filter(p -> !before.containsKey(p.id())).toList()),
        codes(
            now.stream()
                .filter(p -> before.containsKey(p.id()) && !before.get(p.id()).equals(p))
                .toList()),
        codes(then.stream().filter(p -> !after.containsKey(p.id())).toList()));
  }

  private static Map<UUID, Patch> byId(List<Patch> patches) {
    return patches.stream().collect(Collectors.toMap(Patch::id, Function.identity()));
  }

  private static List<String> codes(List<Patch> patches) {
    return patches.stream().map(Patch::code).toList();
  }

  /** True where the older answer holds all that the log holds. */
  public boolean nothing() {
    return missing.isEmpty() && changed.isEmpty() && gone.isEmpty();
  }
}
