package charline.plan;

import charline.pooling.Pairs;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * What one manner saves against another, each shop compared with itself. A shop that found no
 * window counts as one patch more than any may burn.
 *
 * @param shops those that took fewer patches count as more saved
 * @param meanPatches saved by a shop, negative where the other manner took fewer
 */
record Saving(Pairs shops, double meanPatches) {
  /**
   * @param one campaigns of one manner
   * @param than those of the other, of the same shops in the same order
   */
  static Saving of(List<Campaign> one, List<Campaign> than) {
    int[] saved =
        IntStream.range(0, one.size())
            .map(i -> patches(than.get(i)) - patches(one.get(i)))
            .toArray();
    return new Saving(
        new Pairs(
            (int) IntStream.of(saved).filter(n -> n > 0).count(),
            (int) IntStream.of(saved).filter(n -> n < 0).count(),
            (int) IntStream.of(saved).filter(n -> n == 0).count()),
        IntStream.of(saved).average().orElse(0));
  }

  private static int patches(Campaign campaign) {
    return campaign.found() ? campaign.patches() : Campaign.MOST + 1;
  }

  /** Such as {@code fewer patches in 14 shops, more in 3 (p 0.013), 2.1 saved on average}. */
  String words() {
    return String.format(
        Locale.ROOT,
        "fewer patches in %d shops, more in %d (p %.2g), %.1f saved on average",
        shops.more(),
        shops.fewer(),
        shops.byChance(),
        meanPatches);
  }
}
