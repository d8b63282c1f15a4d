package charline.model.check;

import charline.model.Draw;
import charline.stat.distribution.Exponential;
import charline.stat.quadrature.NormalTrapezoid;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The patches of one board under one draw of the parameters, over the nodes of the board's shift.
 * Made once and refilled, as it is gone through for every draw.
 */
final class BoardUnderDraw {
  private static final double CAP = 200;
  private static final double SMALLEST = 1e-300;

  private final List<ObservedPatch> patches;

  /** Readings before the event and at it: all that the likelihood hangs on. */
  private final int trials;

  private NormalTrapezoid rule;

  /** Nodes that there is room for, as many as any rule had so far or more. */
  private int room;

  /** Chance at a node that a reading shows the event, none before having shown it. */
  private final double[][][] hazard;

  private final double[][] likelihood;
  private double[] nodeWeight;
  private double[] shift;

  /** ln of the passes of a reading over those of the one before: few values, met many times. */
  private final double[] lnRatios;

  /** Which of them each reading of a patch has; its first has none. */
  private final int[][] ratioOf;

  /** 1 - e^-(h - l) of each ratio under the draw. */
  private final double[] since;

  BoardUnderDraw(List<ObservedPatch> patches) {
    this.patches = patches;
    trials = patches.stream().mapToInt(p -> Math.min(p.readings(), 2)).sum();
    hazard = new double[patches.size()][][];
    likelihood = new double[patches.size()][];
    lnRatios =
        patches.stream()
            .flatMapToDouble(p -> IntStream.range(1, p.readings()).mapToDouble(k -> lnRatio(p, k)))
            .sorted()
            .distinct()
            .toArray();
    ratioOf =
        patches.stream()
            .map(
                p ->
                    IntStream.range(0, p.readings())
                        .map(k -> k == 0 ? -1 : Arrays.binarySearch(lnRatios, lnRatio(p, k)))
                        .toArray())
            .toArray(int[][]::new);
    since = new double[lnRatios.length];
  }

  private static double lnRatio(ObservedPatch patch, int reading) {
    return Math.log((double) patch.passes()[reading] / patch.passes()[reading - 1]);
  }

  void fill(Draw draw) {
    double perSigma = 1 / draw.sigma();
    use(draw.boardRule(trials));
    shift = rule.exponentials(perSigma * draw.omega(), CAP);
    // (Λ(h) - Λ(l)) / (1 - Λ(l)) = Λ(h) (1 - e^-(h - l)): exact, without a difference.
    for (int r = 0; r < since.length; r++) {
      since[r] = Exponential.cdf(perSigma * draw.psi() * lnRatios[r]);
    }
    for (int i = 0; i < hazard.length; i++) {
      fillPatch(i, draw, perSigma);
    }
    weighNodes();
  }

  private void use(NormalTrapezoid other) {
    if (other == rule) {
      return;
    }
    rule = other;
    int nodes = rule.points();
    nodeWeight = new double[nodes];
    if (nodes <= room) {
      return;
    }
    room = nodes;
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = new double[room];
      hazard[i] = new double[patches.get(i).readings()][room];
    }
  }

  private void fillPatch(int i, Draw draw, double perSigma) {
    ObservedPatch patch = patches.get(i);
    double[] chance = likelihood[i];
    Arrays.fill(chance, 0, shift.length, 1);
    for (int k = 0; k < patch.readings(); k++) {
      int passes = patch.passes()[k];
      double odds =
          Math.exp(
              cap(
                  -perSigma
                      * draw.margin(patch.lnDose(), patch.lnIntensity(), passes, patch.wayStep())));
      double share = k == 0 ? 1 : since[ratioOf[i][k]];
      double[] h = hazard[i][k];
      for (int q = 0; q < shift.length; q++) {
        h[q] = share / (1 + odds * shift[q]);
      }
      boolean seen = patch.seenAt(k);
      for (int q = 0; q < shift.length; q++) {
        // For a first reading 1 - h is odds · shift / (1 + odds · shift), which does not cancel.
        double not = k == 0 ? odds * shift[q] * h[q] : 1 - h[q];
        chance[q] = Math.max(SMALLEST, chance[q] * (seen ? h[q] : not));
      }
    }
  }

  private void weighNodes() {
    double top = Double.NEGATIVE_INFINITY;
    for (int q = 0; q < shift.length; q++) {
      double log = 0;
      double product = rule.weight(q); // few logarithms: of products, while they last
      for (double[] patch : likelihood) {
        if (product * patch[q] < SMALLEST) {
          log += Math.log(product);
          product = 1;
        }
        product *= patch[q];
      }
      log += Math.log(product);
      nodeWeight[q] = log;
      top = Math.max(top, log);
    }
    double sum = 0;
    for (int q = 0; q < shift.length; q++) {
      nodeWeight[q] = Math.exp(nodeWeight[q] - top);
      sum += nodeWeight[q];
    }
    for (int q = 0; q < shift.length; q++) {
      nodeWeight[q] /= sum;
    }
  }

  /** Weights of the nodes given all patches of the board; adding up to 1. */
  double[] nodeWeights() {
    return nodeWeight;
  }

  /** Shift of the board at a node, in units of ω. */
  double node(int q) {
    return rule.node(q);
  }

  double hazard(int patch, int reading, int node) {
    return hazard[patch][reading][node];
  }

  /**
   * What the board's other patches leave open for one of them.
   *
   * @param unseen filled with the chance that the event has not come by each reading
   * @return ln of the chance of what was seen
   */
  double leaveOut(int patch, double[] unseen) {
    Arrays.fill(unseen, 0);
    double sum = 0;
    double seen = 0;
    for (int q = 0; q < shift.length; q++) {
      double weight = nodeWeight[q] / likelihood[patch][q];
      sum += weight;
      seen += weight * likelihood[patch][q];
      double survives = weight;
      for (int k = 0; k < unseen.length; k++) {
        survives *= 1 - hazard[patch][k][q];
        unseen[k] += survives;
      }
    }
    for (int k = 0; k < unseen.length; k++) {
      unseen[k] /= sum;
    }
    return Math.log(Math.max(SMALLEST, seen / sum));
  }

  private static double cap(double exponent) {
    return Math.max(-CAP, Math.min(CAP, exponent));
  }
}
