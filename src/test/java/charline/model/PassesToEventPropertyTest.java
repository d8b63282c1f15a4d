package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.stat.distribution.Logistic;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PassesToEventPropertyTest {
  private static List<CensoredPasses> randomPatches(Random random, int count) {
    List<CensoredPasses> patches = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int without = random.nextInt(4);
      int with =
          random.nextInt(3) == 0 && without > 0
              ? CensoredPasses.NEVER
              : without + 1 + random.nextInt(3);
      patches.add(
          new CensoredPasses(
              2 + random.nextDouble() * 2, random.nextGaussian() / 3, i % 3, without, with));
    }
    return patches;
  }

  private static double[] randomPoint(Random random) {
    return new double[] {
      2.5 + random.nextGaussian(),
      0.4 + 0.4 * random.nextGaussian(),
      0.6 + 0.4 * random.nextGaussian(),
      -1.4 + 0.5 * random.nextGaussian(),
      0.1 + 0.1 * random.nextGaussian()
    };
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void the_quick_value_and_the_expansion_agree_and_the_derivatives_are_differences(long seed) {
    Random random = new Random(seed);
    PassesToEvent target =
        new PassesToEvent(
            randomPatches(random, 20), 0.1, Prior.usual(Event.CLEARING, Emission.PULSED));
    double[] x = randomPoint(random);
    TwiceDifferentiableFunction.Local here = target.local(x);
    assertThat(here.value()).isCloseTo(target.value(x), within(1e-9 * Math.abs(here.value())));
    double h = 1e-5;
    for (int k = 0; k < x.length; k++) {
      double[] up = x.clone();
      double[] down = x.clone();
      up[k] += h;
      down[k] -= h;
      double slope = (target.value(up) - target.value(down)) / (2 * h);
      assertThat(here.gradient()[k])
          .as("slope " + k)
          .isCloseTo(slope, within(1e-4 * Math.max(1, Math.abs(slope))));
      for (int j = 0; j < x.length; j++) {
        double bend = (target.local(up).gradient()[j] - target.local(down).gradient()[j]) / (2 * h);
        assertThat(here.hessian()[j][k])
            .as("bend " + j + " " + k)
            .isCloseTo(bend, within(1e-4 * Math.max(1, Math.abs(bend))));
      }
    }
  }

  /** Boards whose patches were all the same, and patches burned again at the same settings. */
  @ParameterizedTest
  @ValueSource(longs = {31, 32, 33, 34})
  void boards_and_settings_that_are_alike_count_as_often_as_they_came(long seed) {
    Random random = new Random(seed);
    Prior prior = Prior.usual(Event.CHAR, Emission.PULSED);
    List<CensoredPasses> patches = randomPatches(random, 9);
    patches.addAll(patches.subList(0, 6)); // again, on the same three boards
    int copies = 4;
    List<CensoredPasses> copied = new ArrayList<>();
    for (int copy = 0; copy < copies; copy++) {
      for (CensoredPasses d : patches) {
        copied.add(onBoard(d, 3 * copy + d.board()));
      }
    }
    Collections.shuffle(copied, random);
    double[] x = randomPoint(random);
    PassesToEvent none = new PassesToEvent(List.of(), 0.1, prior);
    double once = new PassesToEvent(patches, 0.1, prior).value(x) - none.value(x);
    PassesToEvent often = new PassesToEvent(copied, 0.1, prior);

    assertThat(often.value(x) - none.value(x))
        .isCloseTo(copies * once, within(1e-10 * Math.abs(copies * once)));
    assertThat(often.local(x).value()).isCloseTo(often.value(x), within(1e-9 * Math.abs(once)));
    double h = 1e-5;
    double[] up = x.clone();
    double[] down = x.clone();
    up[PassesToEvent.OMEGA] += h;
    down[PassesToEvent.OMEGA] -= h;
    double bend =
        (often.local(up).gradient()[PassesToEvent.OMEGA]
                - often.local(down).gradient()[PassesToEvent.OMEGA])
            / (2 * h);
    assertThat(often.local(x).hessian()[PassesToEvent.OMEGA][PassesToEvent.OMEGA])
        .isCloseTo(bend, within(1e-4 * Math.max(1, Math.abs(bend))));
  }

  private static CensoredPasses onBoard(CensoredPasses d, int board) {
    return new CensoredPasses(
        d.lnDose(), d.lnIntensity(), board, d.passesWithout(), d.passesWith());
  }

  /** The identity that the likelihood rests on: Λ(h) - Λ(l) = Λ(h) Λ(-l) (1 - e^-(h - l)). */
  @ParameterizedTest
  @ValueSource(doubles = {-30, -3, -0.1, 0, 2, 30})
  void the_difference_of_two_logistics_is_a_product(double low) {
    for (double gap : new double[] {1e-6, 0.3, 5, 60}) {
      double product = Logistic.cdf(low + gap) * Logistic.cdf(-low) * -Math.expm1(-gap);
      double difference = Logistic.cdf(low + gap) - Logistic.cdf(low);
      assertThat(product).isCloseTo(difference, within(1e-12 + 1e-9 * difference));
    }
  }

  /**
   * With one reading a patch and no board spread the likelihood is that of a logistic regression.
   */
  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void one_reading_a_patch_is_a_logistic_regression(long seed) {
    Random random = new Random(seed);
    List<CensoredPasses> patches = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      int passes = 1 + random.nextInt(4);
      boolean seen = random.nextBoolean();
      patches.add(
          new CensoredPasses(
              2 + random.nextDouble(),
              random.nextGaussian(),
              i % 3,
              seen ? 0 : passes,
              seen ? passes : CensoredPasses.NEVER));
    }
    PassesToEvent target = new PassesToEvent(patches, 0, Prior.usual(Event.CHAR, Emission.PULSED));
    PassesToEvent empty = new PassesToEvent(List.of(), 0, Prior.usual(Event.CHAR, Emission.PULSED));
    double[] x = randomPoint(random);
    x[PassesToEvent.OMEGA] = -3; // a board spread of e^-60
    double[] p = PassesToEvent.parameters(x, Prior.usual(Event.CHAR, Emission.PULSED));
    double logLikelihood = 0;
    for (CensoredPasses d : patches) {
      double passes = d.seen() ? d.passesWith() : d.passesWithout();
      double logit = (d.lnDose() + p[1] * d.lnIntensity() + p[2] * Math.log(passes) - p[0]) / p[3];
      logLikelihood += Logistic.logCdf(d.seen() ? logit : -logit);
    }
    assertThat(target.value(x) - empty.value(x))
        .isCloseTo(logLikelihood, within(1e-9 * Math.abs(logLikelihood)));
  }

  /**
   * Boards that differ eight times as much as their patches, against a plain sum over each board's
   * shift: what sixteen patches leave open of it is a small part of its spread.
   */
  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25, 26})
  void a_board_far_better_known_than_boards_are_alike_is_integrated_in_full(long seed) {
    Random random = new Random(seed);
    double[] p = {3, 0.4, 0.7, 0.06, 0.5};
    List<CensoredPasses> patches = new ArrayList<>();
    for (int board = 0; board < 3; board++) {
      double shift = p[4] * random.nextGaussian();
      for (int i = 0; i < 16; i++) {
        double lnDose = p[0] + shift + 0.15 * random.nextGaussian();
        double noise = p[3] * Logistic.quantile(random.nextDouble());
        int seen = (int) Math.ceil(Math.exp((p[0] + shift + noise - lnDose) / p[2]));
        patches.add(
            seen > 3
                ? new CensoredPasses(lnDose, 0, board, 3, CensoredPasses.NEVER)
                : new CensoredPasses(lnDose, 0, board, seen - 1, seen));
      }
    }
    double expected = 0;
    for (int board = 0; board < 3; board++) {
      expected += plainSum(patches, board, p);
    }
    double[] x = {
      p[0], new Softplus(0.15).coordinate(p[1] - Prior.Weight.OF_POWER), 0, Math.log(p[3]), 0
    };
    x[PassesToEvent.PSI] = new Softplus(0.15).coordinate(p[2]);
    x[PassesToEvent.OMEGA] = new Softplus(0.05).coordinate(p[4]);
    Prior prior = Prior.usual(Event.CHAR, Emission.PULSED);
    double prepared = new PassesToEvent(List.of(), 0, prior).value(x);
    PassesToEvent target = new PassesToEvent(patches, 0, prior);
    assertThat(target.value(x) - prepared).isCloseTo(expected, within(1e-5));
    assertThat(target.local(x).value() - prepared).isCloseTo(expected, within(1e-5));
  }

  /** ln of the chance of one board's patches, over 40,001 shifts of the board. */
  private static double plainSum(List<CensoredPasses> patches, int board, double[] p) {
    double sum = 0;
    double all = 0;
    for (int k = -20_000; k <= 20_000; k++) {
      double node = k * 4e-4;
      double density = Math.exp(-node * node / 2);
      double chance = 1;
      for (CensoredPasses d : patches) {
        if (d.board() == board) {
          double above = d.lnDose() - p[0] - p[4] * node;
          double by = d.seen() ? cdf(above, d.passesWith(), p) : 1;
          chance *= by - (d.passesWithout() > 0 ? cdf(above, d.passesWithout(), p) : 0);
        }
      }
      sum += density * chance;
      all += density;
    }
    return Math.log(sum / all);
  }

  private static double cdf(double above, int passes, double[] p) {
    return Logistic.cdf((above + p[2] * Math.log(passes)) / p[3]);
  }

  @Test
  void the_order_of_patches_does_not_matter() {
    List<CensoredPasses> patches = randomPatches(new Random(5), 24);
    List<CensoredPasses> turned = new ArrayList<>(patches);
    Collections.shuffle(turned, new Random(6));
    Prior prior = Prior.usual(Event.CHAR, Emission.PULSED);
    double[] x = randomPoint(new Random(7));
    assertThat(new PassesToEvent(turned, 0, prior).value(x))
        .isCloseTo(new PassesToEvent(patches, 0, prior).value(x), within(1e-9));
  }

  @Test
  void extreme_settings_give_a_finite_mode_and_finite_draws() {
    List<CensoredPasses> patches = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      patches.add(
          new CensoredPasses(
              i - 6, 3 * (i % 2), 0, i % 3, i % 2 == 0 ? i % 3 + 1 : CensoredPasses.NEVER));
    }
    patches.removeIf(d -> !d.seen() && d.passesWithout() == 0);
    for (Event event : Event.values()) {
      ModelFit fit =
          Fitter.withDefaults().fit(patches, 1, event, Prior.usual(event, Emission.PULSED));
      assertThat(fit.tau().high()).isFinite().isGreaterThan(fit.tau().low());
      assertThat(fit.sigma().low()).isPositive();
    }
  }

  /**
   * Flour beetles of Bliss 1935 (Ann. Appl. Biol. 22:134, table IV): killed of exposed by log10
   * dose.
   */
  private static final double[][] BEETLES = {
    {1.6907, 59, 6}, {1.7242, 60, 13}, {1.7552, 62, 18}, {1.7842, 56, 28},
    {1.8113, 63, 52}, {1.8369, 59, 53}, {1.8610, 62, 61}, {1.8839, 60, 60}
  };

  /**
   * With flat priors and no board spread the mode is the maximum-likelihood logit fit: intercept
   * -60.717455 and slope 34.270326 per log10 dose (P. Dunn, glmlab manual, agreeing with Dobson),
   * so τ = ln 10 · 60.717455 / 34.270326 and σ = ln 10 / 34.270326.
   */
  @Test
  void the_mode_is_the_published_logit_fit_of_the_beetles() {
    List<CensoredPasses> patches = new ArrayList<>();
    for (double[] row : BEETLES) {
      for (int i = 0; i < row[1]; i++) {
        boolean killed = i < row[2];
        patches.add(
            new CensoredPasses(
                row[0] * Math.log(10), 0, 0, killed ? 0 : 1, killed ? 1 : CensoredPasses.NEVER));
      }
    }
    Prior flat =
        new Prior(
            new Prior.Normal(4, 1e4),
            new Prior.Weight(0.4, 0.4, 0),
            new Prior.Weight(0.6, 0.35, 0),
            new Prior.Normal(-2, 1e4),
            new HalfNormalSpread(1e-5));
    PassesToEvent target = new PassesToEvent(patches, 0, flat);
    NewtonMaximizer.Outcome outcome =
        NewtonMaximizer.withDefaults().maximize(target, target.start());
    double[] mode = PassesToEvent.parameters(((NewtonMaximizer.Maximum) outcome).point(), flat);
    assertThat(mode[PassesToEvent.TAU])
        .isCloseTo(Math.log(10) * 60.717455 / 34.270326, within(1e-6));
    assertThat(mode[PassesToEvent.SIGMA]).isCloseTo(Math.log(10) / 34.270326, within(1e-6));
  }
}
