package charline.model;

import charline.model.way.WayDesign;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Whether the trials deny what the model takes for granted: that an event comes sooner with more
 * dose, more intensity and more passes. Counts pairs of patches of which one is hotter in every
 * respect, by at least a tenth in dose. More fluence at equal dose may char less, so for char the
 * hotter one also rises at least as much in dose as in intensity, as more power at no faster a hand
 * does. Where coats differ, one that is harder to lift counts as cooler; patches that were made in
 * different ways are not compared.
 *
 * @param agreeing pairs in which the hotter patch had the event sooner
 * @param denying pairs in which the cooler patch had it sooner
 * @param tail chance of so large a surplus of denying pairs had settings no influence at all:
 *     outcomes dealt out anew among the patches, by a fixed seed; 1 where the surplus is the other
 *     way
 */
public record Contradictions(int agreeing, int denying, double tail) {
  /** A tenth more dose: less than that is within the hand's own wandering. */
  private static final double CLEARLY = Math.log(1.1);

  /** Rounding of a logarithm. */
  private static final double SLACK = 1e-9;

  /** Fewer denying pairs than this are a patch or two, not the trials. */
  private static final int FEWEST = 4;

  /**
   * Where settings have no influence one stratum in twenty is called denying; where they have the
   * influence that the model expects, far fewer.
   */
  private static final double DECISIVE = 0.05;

  private static final int DEALS = 999;

  /** Counts over all pairs of patches. */
  public static Contradictions in(Trials trials, Event event) {
    List<CensoredPasses> data = trials.censored(event);
    WayDesign ways = trials.ways(event);
    int agreeing = 0;
    int denying = 0;
    for (CensoredPasses hot : data) {
      for (CensoredPasses cool : data) {
        if (isHotter(hot, cool, event, ways)) {
          agreeing += sooner(hot, cool) ? 1 : 0;
          denying += sooner(cool, hot) ? 1 : 0;
        }
      }
    }
    double tail =
        denying < FEWEST || denying <= agreeing
            ? 1
            : tail(pairs(data, event, ways), data, denying - agreeing);
    return new Contradictions(agreeing, denying, tail);
  }

  private static boolean isHotter(
      CensoredPasses hot, CensoredPasses cool, Event event, WayDesign ways) {
    return hot.lnDose() >= cool.lnDose() + CLEARLY
        && hot.lnIntensity() >= cool.lnIntensity()
        && (event == Event.CLEARING || noFaster(hot, cool))
        && ways.noHarder(hot.way(), cool.way());
  }

  private static List<int[]> pairs(List<CensoredPasses> data, Event event, WayDesign ways) {
    List<int[]> pairs = new ArrayList<>();
    for (int hot = 0; hot < data.size(); hot++) {
      for (int cool = 0; cool < data.size(); cool++) {
        if (isHotter(data.get(hot), data.get(cool), event, ways)) {
          pairs.add(new int[] {hot, cool});
        }
      }
    }
    return pairs;
  }

  /** True if one has as much more dose as it has intensity, so that none of it is lost in speed. */
  private static boolean noFaster(CensoredPasses hot, CensoredPasses cool) {
    double atLeast = -Prior.Weight.OF_POWER * (hot.lnIntensity() - cool.lnIntensity());
    return hot.lnDose() - cool.lnDose() >= atLeast - SLACK;
  }

  private static int agreeing(List<int[]> pairs, List<CensoredPasses> seen) {
    return (int) pairs.stream().filter(p -> sooner(seen.get(p[0]), seen.get(p[1]))).count();
  }

  private static int denying(List<int[]> pairs, List<CensoredPasses> seen) {
    return (int) pairs.stream().filter(p -> sooner(seen.get(p[1]), seen.get(p[0]))).count();
  }

  private static boolean sooner(CensoredPasses one, CensoredPasses other) {
    return one.passesWith() <= other.passesWithout();
  }

  private static double tail(List<int[]> pairs, List<CensoredPasses> data, int surplus) {
    List<CensoredPasses> dealt = new ArrayList<>(data);
    Random random = new Random(DEALS);
    int asMuch = 1; // the deal that was seen counts too
    for (int d = 0; d < DEALS; d++) {
      Collections.shuffle(dealt, random);
      asMuch += denying(pairs, dealt) - agreeing(pairs, dealt) >= surplus ? 1 : 0;
    }
    return asMuch / (DEALS + 1.0);
  }

  /** True if the trials deny the model more often than chance would make them. */
  public boolean decisive() {
    return tail < DECISIVE;
  }
}
