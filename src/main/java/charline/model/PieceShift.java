package charline.model;

import charline.stat.distribution.Exponential;
import charline.stat.distribution.Logistic;
import charline.stat.quadrature.NormalTrapezoid;
import charline.stat.sampling.WeightedDraws;
import java.util.Arrays;
import java.util.List;

/**
 * The shift of a board with patches of its own: under each draw, what they showed weighs the nodes
 * of the normal rule, so that the shift is known as well as its patches tell it.
 *
 * <p>With z(n) = (ln D + φ ln(F/F0) + ψ ln n - τ - u) / σ a patch whose event came after l and by h
 * passes has likelihood Λ(z(h)) - Λ(z(l)) = Λ(z(h)) Λ(-z(l)) (1 - exp(-ψ ln(h/l) / σ)).
 */
final class PieceShift implements BoardShift {
  /** Nodes that weigh less than this of the heaviest cannot be seen in a chance. */
  private static final double NEGLIGIBLE = 1e-9;

  private static final int BISECTIONS = 200;
  private static final double ACCURACY = 1e-6;

  /** Multiples of it fill the interval from 0 to 1 evenly. */
  private static final double GOLDEN_RATIO = (Math.sqrt(5) - 1) / 2;

  private final double[] sigma;
  private final double[] psi;

  /** ln of the chance of what the patches showed, one per draw. */
  private final double[] logEvidence;

  /** Shifts that the board may have, in ln dose, and their weights, draw by draw. */
  private final double[][] shifts;

  private final double[][] weights;

  /** exp(-u / σ) of each shift u, draw by draw. */
  private final double[][] odds;

  /** What a piece's patches said, draw by draw: see the fields. */
  record Parts(double[] logEvidence, double[][] shifts, double[][] weights) {}

  Parts parts() {
    return new Parts(logEvidence, shifts, weights);
  }

  /** The shift of these parts, under draws with these σ and ψ. */
  static PieceShift of(double[] sigma, double[] psi, Parts parts) {
    return new PieceShift(sigma, psi, parts.logEvidence(), parts.shifts(), parts.weights());
  }

  private PieceShift(
      double[] sigma, double[] psi, double[] logEvidence, double[][] shifts, double[][] weights) {
    this.sigma = sigma;
    this.psi = psi;
    this.logEvidence = logEvidence;
    this.shifts = shifts;
    this.weights = weights;
    odds = new double[shifts.length][];
    for (int i = 0; i < odds.length; i++) {
      double perSigma = 1 / sigma[i];
      odds[i] = Arrays.stream(shifts[i]).map(u -> BoardShift.cappedExp(-u * perSigma)).toArray();
    }
  }

  /**
   * What patches say of the board they were burned on.
   *
   * @param draws of parameters that owe nothing to these patches
   * @param patches one or more
   * @param waySteps values of the shifts of each, from those of the way that τ is for
   */
  static PieceShift of(Posterior draws, List<CensoredPasses> patches, List<double[]> waySteps) {
    int count = draws.size();
    double[] sigma = draws.perDraw(draws::sigma);
    double[] logEvidence = new double[count];
    double[][] shifts = new double[count][];
    double[][] weights = new double[count][];
    int trials =
        patches.stream().mapToInt(p -> (p.passesWithout() > 0 ? 1 : 0) + (p.seen() ? 1 : 0)).sum();
    for (int i = 0; i < count; i++) {
      NormalTrapezoid rule = NormalTrapezoid.forLogistic(trials, draws.omega(i) / sigma[i]);
      double[] shift = new double[rule.points()];
      double[] log = new double[rule.points()];
      for (int q = 0; q < shift.length; q++) {
        shift[q] = draws.omega(i) * rule.node(q);
        log[q] = Math.log(rule.weight(q));
      }
      for (int p = 0; p < patches.size(); p++) {
        add(patches.get(p), draws.wayShift(i, waySteps.get(p)), draws, i, rule, log);
      }
      double top = Arrays.stream(log).max().orElseThrow();
      double sum = 0;
      int kept = 0;
      for (int q = 0; q < log.length; q++) {
        double weight = Math.exp(log[q] - top);
        if (weight > NEGLIGIBLE) {
          sum += weight;
          shift[kept] = shift[q];
          log[kept++] = weight;
        }
      }
      logEvidence[i] = top + Math.log(sum);
      shifts[i] = Arrays.copyOf(shift, kept);
      weights[i] = new double[kept];
      for (int q = 0; q < kept; q++) {
        weights[i][q] = log[q] / sum;
      }
    }
    return new PieceShift(sigma, draws.perDraw(draws::psi), logEvidence, shifts, weights);
  }

  private static void add(
      CensoredPasses patch,
      double wayShift,
      Posterior draws,
      int i,
      NormalTrapezoid rule,
      double[] log) {
    double lnDose = patch.lnDose() - wayShift;
    double lnWith = patch.seen() ? Math.log(patch.passesWith()) : 0;
    double lnWithout = patch.passesWithout() > 0 ? Math.log(patch.passesWithout()) : 0;
    double between =
        patch.seen() && patch.passesWithout() > 0
            ? Math.log(Exponential.cdf(draws.psi(i) * (lnWith - lnWithout) / draws.sigma(i)))
            : 0;
    for (int q = 0; q < log.length; q++) {
      double node = rule.node(q);
      log[q] += between;
      if (patch.seen()) {
        log[q] += Logistic.logCdf(draws.score(i, node, lnDose, patch.lnIntensity(), lnWith));
      }
      if (patch.passesWithout() > 0) {
        log[q] += Logistic.logCdf(-draws.score(i, node, lnDose, patch.lnIntensity(), lnWithout));
      }
    }
  }

  /** ln of the chance of what the patches showed under a draw, their board unknown before. */
  double logEvidence(int draw) {
    return logEvidence[draw];
  }

  /**
   * By how much the board's even-chance doses lie above those of the average board, in ln dose.
   * Each node stands for all shifts nearer to it than to the next, and each draw takes another of
   * them; else all draws would share a node at 0, and limits would jump to it.
   *
   * @param drawWeights weights of the draws given the patches
   */
  Estimate shift(double[] drawWeights) {
    int count = Arrays.stream(shifts).mapToInt(s -> s.length).sum();
    double[] all = new double[count];
    double[] weight = new double[count];
    int k = 0;
    for (int i = 0; i < shifts.length; i++) {
      double spacing = shifts[i].length > 1 ? shifts[i][1] - shifts[i][0] : 0;
      double place = i * GOLDEN_RATIO % 1 - 0.5;
      for (int q = 0; q < shifts[i].length; q++) {
        all[k] = shifts[i][q] + place * spacing;
        weight[k++] = drawWeights[i] * weights[i][q];
      }
    }
    return new Estimate(
        WeightedDraws.quantile(all, weight, 0.5),
        WeightedDraws.quantile(all, weight, 0.05),
        WeightedDraws.quantile(all, weight, 0.95));
  }

  @Override
  public BoardShift chosen(int[] draws) {
    double[] theirSigma = new double[draws.length];
    double[] theirPsi = new double[draws.length];
    double[] theirEvidence = new double[draws.length];
    double[][] theirShifts = new double[draws.length][];
    double[][] theirWeights = new double[draws.length][];
    for (int k = 0; k < draws.length; k++) {
      theirSigma[k] = sigma[draws[k]];
      theirPsi[k] = psi[draws[k]];
      theirEvidence[k] = logEvidence[draws[k]];
      theirShifts[k] = shifts[draws[k]];
      theirWeights[k] = weights[draws[k]];
    }
    return new PieceShift(theirSigma, theirPsi, theirEvidence, theirShifts, theirWeights);
  }

  @Override
  public double chance(int draw, double margin, double seamShare) {
    return mean(draw, margin, seamShare).chance();
  }

  private Seam.Mean mean(int draw, double margin, double seamShare) {
    return new Seam(seamShare, psi[draw], sigma[draw])
        .mean(margin, shifts[draw], odds[draw], weights[draw]);
  }

  /** By Newton's method on the log odds, kept inside a bracket that shrinks with every step. */
  @Override
  public double margin(int draw, double chance, double seamShare) {
    double[] shift = shifts[draw];
    double target = Logistic.quantile(chance);
    double spread = sigma[draw] * (Math.abs(target) + 1);
    double low = shift[0] - spread - (seamShare == 0 ? 0 : psi[draw] * Math.log(2));
    double high = shift[shift.length - 1] + spread;
    double margin = (low + high) / 2;
    for (int step = 0; step < BISECTIONS && high - low > ACCURACY; step++) {
      Seam.Mean now = mean(draw, margin, seamShare);
      double sum = now.chance();
      if (sum < chance) {
        low = margin;
      } else {
        high = margin;
      }
      double move = sigma[draw] * (target - Logistic.quantile(sum)) * sum * (1 - sum) / now.slope();
      double next = margin + move;
      if (Math.abs(move) < ACCURACY) {
        return next;
      }
      margin = next > low && next < high ? next : (low + high) / 2;
    }
    return margin;
  }
}
