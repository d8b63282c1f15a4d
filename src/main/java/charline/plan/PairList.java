package charline.plan;

import charline.exposure.Settings;
import charline.window.RigSetup;
import java.util.List;

/**
 * Pairs of patches that tell two ways of working apart: each pair on one board, the cooler pairs
 * first.
 *
 * @param site where they are burned
 * @param pairs in the order of burning; empty where nothing may be burned there
 */
public record PairList(Site site, List<Pair> pairs) {
  public PairList {
    pairs = List.copyOf(pairs);
  }

  /**
   * Two patches side by side.
   *
   * @param number its place in the list, from 1
   * @param place on what
   * @param burns the one to burn first, then the other
   */
  public record Pair(int number, Place place, List<Burn> burns) {
    public Pair {
      burns = List.copyOf(burns);
    }
  }

  /**
   * One patch of a pair.
   *
   * @param ofFirst whether it is made in the first of the two ways
   * @param bench rig and fixed knobs
   * @param setting power and speed
   * @param settings everything dialled in
   * @param passes read after every pass up to this one, but never past the first brown
   * @param charRiskMean chance of char by the last pass on a new board, averaged over the posterior
   * @param charRiskUpper one-sided upper bound of that chance at the asked confidence
   * @param clearChanceMean chance that the finish is gone by the last pass
   */
  public record Burn(
      boolean ofFirst,
      RigSetup bench,
      DialSetting setting,
      Settings settings,
      int passes,
      double charRiskMean,
      double charRiskUpper,
      double clearChanceMean) {}
}
