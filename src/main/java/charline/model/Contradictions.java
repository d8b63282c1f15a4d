package charline.model;

import java.util.List;

/**
 * Whether the trials deny what the model takes for granted: that an event comes sooner with more
 * dose, more intensity and more passes. Counts pairs of patches of which one is hotter in every
 * respect, by at least {@link #CLEARLY} in dose.
 *
 * @param agreeing pairs in which the hotter patch had the event sooner
 * @param denying pairs in which the cooler patch had it sooner
 */
public record Contradictions(int agreeing, int denying) {
  /** A tenth more dose: less than that is within the hand's own wandering. */
  private static final double CLEARLY = Math.log(1.1);

  private static final int FEWEST = 4;

  /** Counts over all pairs of patches. */
  public static Contradictions in(Trials trials, Event event) {
    List<CensoredPasses> data = trials.censored(event);
    int agreeing = 0;
    int denying = 0;
    for (CensoredPasses hot : data) {
      for (CensoredPasses cool : data) {
        if (hot.lnDose() >= cool.lnDose() + CLEARLY && hot.lnIntensity() >= cool.lnIntensity()) {
          agreeing += hot.passesWith() <= cool.passesWithout() ? 1 : 0;
          denying += cool.passesWith() <= hot.passesWithout() ? 1 : 0;
        }
      }
    }
    return new Contradictions(agreeing, denying);
  }

  /** True if the trials deny the model more often than they agree with it. */
  public boolean decisive() {
    return denying >= FEWEST && denying > agreeing;
  }
}
