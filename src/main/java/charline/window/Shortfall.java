package charline.window;

import java.util.Optional;

/**
 * Why a search found no box.
 *
 * @param anythingWithinReach some setting of the rig lies within what was tried
 * @param best of the settings that keep the char promise the one that comes nearest to the clearing
 *     promise; empty where none keeps the char promise
 * @param clearsSomewhere some setting keeps the clearing promise
 * @param openAtOtherSpeeds there is one at speeds that were not tried
 * @param openWithFewerUnharmed there is one at settings that too few patches came through
 */
record Shortfall(
    boolean anythingWithinReach,
    Optional<Forecast> best,
    boolean clearsSomewhere,
    boolean openAtOtherSpeeds,
    boolean openWithFewerUnharmed) {
  static final Shortfall NONE = new Shortfall(true, Optional.empty(), true, false, false);
}
