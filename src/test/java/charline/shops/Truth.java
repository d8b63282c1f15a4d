package charline.shops;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Prior;
import charline.shops.Scenario.Weights;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * What is true in one shop, unknown to whoever burns there.
 *
 * @param charring of char
 * @param clearing of clearing
 * @param misgraded share of readings with one of char and clearing judged wrongly
 */
public record Truth(Law charring, Law clearing, double misgraded) {
  private static final double LIMIT = 0.05;
  private static final double TARGET = 0.90;

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
    return new Truth(charring, clearing, scenario.misgraded());
  }

  private static Law law(
      Scenario s, boolean charring, double lnDose, double chance, double lnReference, Random r) {
    double omega = s.omega();
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
      omega = Math.abs(0.2 * r.nextGaussian());
      sigma = 0.25 * Math.exp(0.6 * r.nextGaussian());
      Prior prior = Prior.usual(charring ? Event.CHAR : Event.CLEARING, Emission.PULSED);
      phi = drawn(prior.phi(), r);
      psi = drawn(prior.psi(), r);
    }
    return Law.pinned(
        lnDose, chance, phi, psi, sigma * s.widening(), omega, s.noise(), lnReference);
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
