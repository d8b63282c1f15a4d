package charline.shops;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Prior;
import charline.shops.Scenario.Weights;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * What is true in one shop, unknown to whoever burns there.
 *
 * @param charring of char
 * @param clearing of clearing
 * @param misgraded share of readings with one of char and clearing judged wrongly
 * @param heavyTailed shifts of boards follow Student's t with three degrees of freedom
 */
public record Truth(Law charring, Law clearing, double misgraded, boolean heavyTailed) {
  private static final double LIMIT = 0.05;
  private static final double TARGET = 0.90;
  private static final int HEAVY_NODES = 2001;
  private static final TDistribution HEAVY = new TDistribution(null, 3);
  private static final double LEAST_ANEW = 0.05;
  private static final double MOST_ANEW = 0.5;

  /**
   * What becomes of one patch.
   *
   * @param charsAt first pass that chars it
   * @param clearsAt first pass that clears it
   */
  public record Outcome(double charsAt, double clearsAt) {}

  /** The truth of one shop of a scenario. */
  public static Truth draw(Scenario scenario, Random random) {
    double lnReference = Math.log(ShopBench.intensity(60));
    // The middle of the window wanders a fifth either way about the middle of the ladder.
    double middle = Math.log(ShopBench.dose(60, 22)) + 0.4 * random.nextDouble() - 0.2;
    Law charring = law(scenario, true, middle + scenario.gap() / 2, LIMIT, lnReference, random);
    Law clearing = law(scenario, false, middle - scenario.gap() / 2, TARGET, lnReference, random);
    return new Truth(charring, clearing, scenario.misgraded(), scenario.boards().heavyTailed());
  }

  private static Law law(
      Scenario s, boolean charring, double lnDose, double chance, double lnReference, Random r) {
    Scenario.Boards boards = s.boards();
    double omega = charring ? boards.omega() : boards.omegaOfClearing();
    if (boards.anew()) {
      omega = between(LEAST_ANEW, MOST_ANEW, r);
    }
    double sigma = 0.2 * Math.exp(0.3 * r.nextGaussian());
    double phi = charring ? between(0.2, 0.7, r) : between(0.4, 1.0, r);
    double psi = charring ? between(0.3, 0.8, r) : between(0.5, 1.0, r);
    if (s.weights() == Weights.WEAK) {
      phi = between(0, 0.1, r);
      psi = between(0.1, 0.25, r);
    } else if (s.weights() == Weights.STRONG) {
      phi = between(1.2, 1.6, r);
      psi = between(1.2, 1.5, r);
    } else if (s.weights() == Weights.FROM_PRIOR) {
      Prior prior = Prior.usual(charring ? Event.CHAR : Event.CLEARING, Emission.PULSED);
      omega = prior.omega().quantile(Math.max(1e-9, r.nextDouble()));
      sigma = Math.exp(prior.lnSigma().mean() + prior.lnSigma().sd() * r.nextGaussian());
      phi = drawn(prior.phi(), r);
      psi = drawn(prior.psi(), r);
    }
    return Law.pinned(
        lnDose, chance, phi, psi, sigma * s.widening(), omega, s.noise(), lnReference);
  }

  /** The shift of a board not seen yet, in units of the spread of boards. */
  public double shift(Random random) {
    double normal = random.nextGaussian();
    if (!heavyTailed) {
      return normal;
    }
    double squares = 0;
    for (int k = 0; k < 3; k++) {
      double z = random.nextGaussian();
      squares += z * z;
    }
    // Student's t with three degrees of freedom has variance 3.
    return normal / Math.sqrt(squares / 3) / Math.sqrt(3);
  }

  private static double between(double low, double high, Random random) {
    return low + (high - low) * random.nextDouble();
  }

  private static double drawn(Prior.Weight weight, Random random) {
    double value;
    do {
      value = weight.mean() + weight.sd() * random.nextGaussian();
    } while (value <= weight.least());
    return value;
  }

  /** Burns one patch on a board, given by its two shifts in units of the spread of boards. */
  public Outcome burn(double lnDose, double lnIntensity, double[] board, Random random) {
    return new Outcome(
        charring.firstPass(lnDose, lnIntensity, board[0], noise(charring, random)),
        clearing.firstPass(lnDose, lnIntensity, board[1], noise(clearing, random)));
  }

  /**
   * The true chance of an event at a setting on a board not seen yet.
   *
   * @param law one of the two
   */
  public double newBoardChance(Law law, double doseJoulesPerCm2, double intensity, int passes) {
    if (!heavyTailed) {
      return law.newBoardChance(doseJoulesPerCm2, intensity, passes);
    }
    double sum = 0;
    for (int q = 0; q < HEAVY_NODES; q++) {
      double shift = HEAVY.inverseCumulativeProbability((q + 0.5) / HEAVY_NODES) / Math.sqrt(3);
      sum += law.chanceOn(shift, doseJoulesPerCm2, intensity, passes);
    }
    return sum / HEAVY_NODES;
  }

  private static double noise(Law law, Random random) {
    return law.noise().quantile(Math.max(1e-12, random.nextDouble()));
  }

  /** What is judged after each of these numbers of passes, up to the first char. */
  public List<ShopBench.Seen> seen(int[] reads, Outcome came, Random random) {
    List<ShopBench.Seen> all = new ArrayList<>();
    for (int passes : reads) {
      boolean charred = passes >= came.charsAt();
      boolean cleared = passes >= came.clearsAt();
      if (random.nextDouble() < misgraded) {
        if (random.nextBoolean()) {
          charred = !charred;
        } else {
          cleared = !cleared;
        }
      }
      all.add(new ShopBench.Seen(passes, charred, cleared));
      if (charred) {
        break;
      }
    }
    return all;
  }
}
