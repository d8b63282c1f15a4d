package charline.model;

import charline.stat.distribution.Logistic;
import charline.stat.quadrature.NormalTrapezoid;

/**
 * An area worked in strokes side by side, a share of which two strokes cover: the seams get their
 * passes twice. On one board, with p the chance after n passes and q that after 2 n passes at the
 * same setting, such an area meets the event with chance
 *
 * <pre>  1 - (1 - p)^(1 - s) · (1 - q)^s,</pre>
 *
 * s being the share of seams: the same number of passes everywhere for s = 0, twice as many for s =
 * 1. The second stroke follows on the first without a rest, and the heat that the first leaves is
 * not in the model.
 *
 * <p>The mean over boards is taken of the whole expression. Putting means over boards into it
 * instead would understate the chance, since the mean of a product of powers that add up to 1 is
 * never above the product of the powers of the means (Hölder's inequality).
 */
final class Seam {
  /** Odds from which on the event is certain; their product with 2 is still a number. */
  private static final double CERTAIN = 1e300;

  private static final double CAP = 700;

  /** A rise of the log odds whose exponential is far from the smallest number. */
  private static final double STEEPEST = 600;

  private static final double OUT_OF_RANGE = Math.exp(CAP);

  private final double share;
  private final double sigma;

  /** ψ ln 2 / σ: by how much twice the passes raise the log odds. */
  private final double rise;

  /** Odds of not meeting the event with twice the passes, over those with the passes once. */
  private final double twice;

  /**
   * @param share share of seams, above 0 and up to 1
   * @param psi weight of ln passes, 0 or more
   * @param sigma spread of a single patch, in ln dose
   */
  Seam(double share, double psi, double sigma) {
    this.share = share;
    this.sigma = sigma;
    rise = psi * Math.log(2) / sigma;
    twice = Math.exp(-rise);
  }

  /**
   * A chance averaged over boards.
   *
   * @param slope its change with margin / σ
   */
  record Mean(double chance, double slope) {}

  /**
   * Averaged over boards.
   *
   * @param margin by how much the setting lies above the even chance of n passes on an average
   *     board, in ln dose
   * @param omega spread between boards, in ln dose
   * @param rule over the board's shift
   * @param wing exp(ω x / σ) at the nodes x of one side of the rule, the widest first
   */
  Mean mean(double margin, double omega, NormalTrapezoid rule, double[] wing) {
    // Odds that are cut off would be raised again by a wide wing and by twice the passes.
    if (wing[0] >= OUT_OF_RANGE || rise > STEEPEST || Math.abs(margin) > CAP * sigma) {
      return meanOfSteps(margin, omega, rule);
    }
    double odds = Math.exp(margin / sigma);
    double[] sums = new double[2];
    add(odds, rule.weight(wing.length), sums);
    for (int k = 0; k < wing.length; k++) {
      add(odds * wing[k], rule.weight(k), sums);
      add(odds / wing[k], rule.weight(k), sums);
    }
    return new Mean(sums[0], sums[1]);
  }

  /**
   * Averaged over shifts that one board may have.
   *
   * @param margin by how much the setting lies above the even chance of n passes on an average
   *     board, in ln dose
   * @param shifts of the board, in ln dose
   * @param odds exp(-u / σ) of each shift u
   * @param weights of the shifts, adding up to 1
   */
  Mean mean(double margin, double[] shifts, double[] odds, double[] weights) {
    double[] sums = new double[2];
    if (rise > STEEPEST || Math.abs(margin) > CAP * sigma) {
      for (int q = 0; q < shifts.length; q++) {
        Mean at = at(margin - shifts[q]);
        sums[0] += weights[q] * at.chance();
        sums[1] += weights[q] * at.slope();
      }
    } else {
      double unshifted = Math.exp(margin / sigma);
      for (int q = 0; q < shifts.length; q++) {
        add(unshifted * odds[q], weights[q], sums);
      }
    }
    return new Mean(sums[0], sums[1]);
  }

  /**
   * On one board whose shift is known.
   *
   * @param margin by how much the setting lies above the even chance of n passes on that board, in
   *     ln dose
   */
  Mean at(double margin) {
    double z = margin / sigma;
    double lnUnharmed = (1 - share) * Logistic.logCdf(-z) + share * Logistic.logCdf(-z - rise);
    double slope = (1 - share) * Logistic.cdf(z) + share * Logistic.cdf(z + rise);
    return new Mean(-Math.expm1(lnUnharmed), Math.exp(lnUnharmed) * slope);
  }

  /** One board: one power a node, as the two chances differ by a constant factor of the odds. */
  private void add(double odds, double weight, double[] sums) {
    if (odds > CERTAIN) {
      sums[0] += weight;
      return;
    }
    double once = 1 / (1 + odds);
    double unharmed =
        share == 0 ? once : Math.pow(twice * (1 + odds) / (odds + twice), share) * once;
    sums[0] += weight * (1 - unharmed);
    sums[1] +=
        weight * unharmed * ((1 - share) * odds / (1 + odds) + share * odds / (odds + twice));
  }

  /** The same where patches hardly differ and boards do: every node is a step. */
  private Mean meanOfSteps(double margin, double omega, NormalTrapezoid rule) {
    double sum = 0;
    double slope = 0;
    for (int q = 0; q < rule.points(); q++) {
      Mean node = at(margin - omega * rule.node(q));
      sum += rule.weight(q) * node.chance();
      slope += rule.weight(q) * node.slope();
    }
    return new Mean(sum, slope);
  }
}
