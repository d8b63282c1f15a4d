package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.stat.distribution.Logistic;
import charline.stat.sampling.WeightedDraws;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A piece's chance given its own patches, against a sum over 40,000 shifts by Bayes' rule; as near
 * as the rule is for a new board.
 */
class PieceShiftPropertyTest {
  private static final int SHIFTS = 40_000;
  private static final int ALIKE = 400;
  private static final double LN_REFERENCE = Math.log(1.2);

  /** The parameters of one draw. */
  private record Truth(double tau, double phi, double psi, double sigma, double omega) {
    static Truth random(Random random) {
      return new Truth(
          random.nextGaussian(),
          0.1 + random.nextDouble(),
          0.2 + random.nextDouble(),
          0.1 + 0.4 * random.nextDouble(),
          0.05 + 0.6 * random.nextDouble());
    }

    Posterior posterior() {
      return posterior(1);
    }

    Posterior posterior(int alike) {
      double[] draw = {
        tau,
        new Softplus(0.15).coordinate(phi),
        new Softplus(0.15).coordinate(psi),
        Math.log(sigma),
        new Softplus(0.05).coordinate(omega),
      };
      return new Posterior(
          new WeightedDraws(
              Collections.nCopies(alike, draw).toArray(double[][]::new),
              DoubleStream.generate(() -> 1.0 / alike).limit(alike).toArray()),
          LN_REFERENCE,
          Prior.usual(Event.CLEARING, Emission.PULSED),
          new double[0]);
    }

    double by(double lnDose, double lnIntensity, int passes, double shift) {
      return Logistic.cdf(
          (lnDose + phi * (lnIntensity - LN_REFERENCE) + psi * Math.log(passes) - tau - shift)
              / sigma);
    }

    double likelihood(CensoredPasses p, double shift) {
      double by = p.seen() ? by(p.lnDose(), p.lnIntensity(), p.passesWith(), shift) : 1;
      double before =
          p.passesWithout() > 0 ? by(p.lnDose(), p.lnIntensity(), p.passesWithout(), shift) : 0;
      return by - before;
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 5, 12})
  void a_chance_is_the_mean_over_shifts_given_the_patches(int count) {
    Random random = new Random(count);
    for (int k = 0; k < 40; k++) {
      Truth truth = Truth.random(random);
      List<CensoredPasses> patches = patches(count, truth, random);
      PieceShift piece = PieceShift.of(truth.posterior(), patches, noSteps(count));
      double margin = random.nextGaussian();
      double[] byHand = byHand(truth, patches, margin);

      assertThat(piece.logEvidence(0)).isCloseTo(byHand[0], within(2e-5 * (1 + count)));
      assertThat(piece.chance(0, margin, 0)).isCloseTo(byHand[1], within(1e-4));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.05, 0.5, 0.9, 0.99})
  void at_its_margin_the_chance_is_what_was_asked(double asked) {
    Random random = new Random(9);
    for (int k = 0; k < 100; k++) {
      Truth truth = Truth.random(random);
      PieceShift piece =
          PieceShift.of(truth.posterior(), patches(1 + k % 6, truth, random), noSteps(1 + k % 6));

      assertThat(piece.chance(0, piece.margin(0, asked, 0), 0))
          .isCloseTo(asked, within(1e-4 * Math.min(asked, 1 - asked)));
    }
  }

  /** Draws that are all alike, so that their shifts are those of one. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 3, 8})
  void the_limits_of_the_shift_are_those_given_the_patches(int count) {
    Random random = new Random(20 + count);
    for (int k = 0; k < 12; k++) {
      Truth truth = Truth.random(random);
      List<CensoredPasses> patches = patches(count, truth, random);
      double[] even = new double[ALIKE];
      Arrays.fill(even, 1.0 / ALIKE);
      Estimate shift = PieceShift.of(truth.posterior(ALIKE), patches, noSteps(count)).shift(even);

      double near = 0.1 * truth.omega();
      assertThat(shift.low()).isCloseTo(quantile(truth, patches, 0.05), within(near));
      assertThat(shift.median()).isCloseTo(quantile(truth, patches, 0.5), within(near));
      assertThat(shift.high()).isCloseTo(quantile(truth, patches, 0.95), within(near));
    }
  }

  private static double quantile(Truth truth, List<CensoredPasses> patches, double share) {
    double[] shifts = new double[SHIFTS];
    double[] weights = new double[SHIFTS];
    for (int b = 0; b < SHIFTS; b++) {
      double x = 8 * ((2 * b + 1.0) / SHIFTS - 1);
      shifts[b] = truth.omega() * x;
      weights[b] = Math.exp(-x * x / 2);
      for (CensoredPasses p : patches) {
        weights[b] *= truth.likelihood(p, shifts[b]);
      }
    }
    double sum = Arrays.stream(weights).sum();
    return WeightedDraws.quantile(
        shifts, Arrays.stream(weights).map(w -> w / sum).toArray(), share);
  }

  /** ln of the chance of what the patches showed, and the event's chance after it. */
  private static double[] byHand(Truth truth, List<CensoredPasses> patches, double margin) {
    double prior = 0;
    double evidence = 0;
    double met = 0;
    for (int b = 0; b < SHIFTS; b++) {
      double x = 8 * ((2 * b + 1.0) / SHIFTS - 1);
      double shift = truth.omega() * x;
      double weight = Math.exp(-x * x / 2);
      prior += weight;
      for (CensoredPasses p : patches) {
        weight *= truth.likelihood(p, shift);
      }
      evidence += weight;
      met += weight * Logistic.cdf((margin - shift) / truth.sigma());
    }
    return new double[] {Math.log(evidence / prior), met / evidence};
  }

  /** Patches about the dose that meets the event on the first pass, on a piece that is unlike. */
  private static List<CensoredPasses> patches(int count, Truth truth, Random random) {
    double shift = truth.omega() * random.nextGaussian();
    List<CensoredPasses> all = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      double lnDose = truth.tau() - 0.5 + random.nextDouble();
      double lnIntensity = 0.3 * random.nextGaussian();
      int without = 0;
      int with = CensoredPasses.NEVER;
      double e = random.nextDouble();
      for (int n = 1; n <= 6 && with == CensoredPasses.NEVER; n++) {
        if (e < truth.by(lnDose, lnIntensity, n, shift)) {
          with = n;
        } else {
          without = n;
        }
      }
      all.add(new CensoredPasses(lnDose, lnIntensity, 0, without, with));
    }
    return all;
  }

  private static List<double[]> noSteps(int count) {
    List<double[]> steps = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      steps.add(new double[0]);
    }
    return steps;
  }
}
