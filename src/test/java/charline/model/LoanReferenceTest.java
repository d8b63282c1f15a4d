package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.stat.distribution.Logistic;
import charline.stat.quadrature.GaussHermite;
import charline.stat.sampling.WeightedDraws;
import charline.trial.Stratum;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A fit with a loan, against computations that know nothing of how it is made: draws from both
 * priors weighted by a plainly written likelihood.
 */
class LoanReferenceTest {
  /** The usual prior but for a narrower τ, so that many draws from it fit the patches. */
  private static final Prior USUAL =
      new Prior(
          new Prior.Normal(3, 0.6),
          Prior.usual(Event.CHAR, Emission.PULSED).phi(),
          Prior.usual(Event.CHAR, Emission.PULSED).psi(),
          Prior.usual(Event.CHAR, Emission.PULSED).lnSigma(),
          new HalfNormalSpread(0.2));

  private static final double SHARE = 0.4;
  private static final int DRAWS = 100_000;
  private static final GaussHermite BOARD_RULE = new GaussHermite(15);

  /** Eight patches on three boards: ln dose, ln fluence from the reference, board, readings. */
  private static final List<CensoredPasses> EIGHT =
      List.of(
          new CensoredPasses(2.6, -0.2, 0, 3, 4),
          new CensoredPasses(3.0, 0.0, 0, 2, CensoredPasses.NEVER),
          new CensoredPasses(3.4, 0.1, 0, 0, 1),
          new CensoredPasses(2.8, -0.1, 1, 1, 2),
          new CensoredPasses(3.2, 0.1, 1, 1, 2),
          new CensoredPasses(2.5, -0.1, 2, 4, CensoredPasses.NEVER),
          new CensoredPasses(2.9, 0.0, 2, 0, 2),
          new CensoredPasses(3.1, 0.2, 2, 1, 3));

  /** The same with outcomes turned about, so that the transition is wide. */
  private static final List<CensoredPasses> BLURRED =
      List.of(
          new CensoredPasses(2.6, -0.2, 0, 1, 2),
          new CensoredPasses(3.0, 0.0, 0, 4, CensoredPasses.NEVER),
          new CensoredPasses(3.4, 0.1, 0, 0, 1),
          new CensoredPasses(2.8, -0.1, 1, 1, 2),
          new CensoredPasses(3.2, 0.1, 1, 3, 4),
          new CensoredPasses(2.5, -0.1, 2, 4, CensoredPasses.NEVER),
          new CensoredPasses(2.9, 0.0, 2, 0, 1),
          new CensoredPasses(3.3, 0.2, 2, 2, 3));

  private static Prior lent(double lnSigmaSd) {
    return new Prior(
        new Prior.Normal(2.9, 0.3),
        new Prior.Weight(0.4, 0.2, Prior.Weight.OF_POWER),
        new Prior.Weight(0.6, 0.2, 0),
        new Prior.Normal(Math.log(0.25), lnSigmaSd),
        USUAL.omega());
  }

  private static ModelFit fit(List<CensoredPasses> data, Prior own, Prior lent, double share) {
    Lender lender = new Lender(new Stratum("latex", "pine", Emission.PULSED, 1064), 18, true);
    return Fitter.withDefaults()
        .borrowing(Map.of(Event.CHAR, new BorrowedPrior(lent, share, List.of(lender))))
        .fit(data, 0, Event.CHAR, own);
  }

  /** What a mixture of priors and these patches say, by weighting draws from the priors. */
  private record Plain(WeightedDraws draws) {
    static Plain of(Prior own, Prior lent, double share, List<CensoredPasses> data) {
      Random random = new Random(7);
      double[][] points = new double[DRAWS][];
      double[] weights = new double[DRAWS];
      double sum = 0;
      for (int i = 0; i < DRAWS; i++) {
        Prior from = random.nextDouble() < share ? lent : own;
        points[i] =
            new double[] {
              normal(from.tau(), random),
              cutOff(from.phi(), random),
              cutOff(from.psi(), random),
              Math.exp(normal(from.lnSigma(), random)),
              Math.abs(from.omega().rootMeanSquare() * random.nextGaussian())
            };
        weights[i] = likelihood(points[i], data);
        sum += weights[i];
      }
      double total = sum;
      return new Plain(
          new WeightedDraws(points, Arrays.stream(weights).map(w -> w / total).toArray()));
    }

    private static double normal(Prior.Normal of, Random random) {
      return of.mean() + of.sd() * random.nextGaussian();
    }

    private static double cutOff(Prior.Weight of, Random random) {
      double drawn = normal(of.normal(), random);
      while (drawn < of.least()) {
        drawn = normal(of.normal(), random);
      }
      return drawn;
    }

    /** F(hi) - F(lo) of every patch, the board's shift integrated out. */
    private static double likelihood(double[] p, List<CensoredPasses> data) {
      double[] boards = new double[3];
      for (int q = 0; q < BOARD_RULE.points(); q++) {
        double shift = p[4] * BOARD_RULE.node(q);
        double[] all = new double[boards.length];
        Arrays.fill(all, BOARD_RULE.weight(q));
        for (CensoredPasses d : data) {
          all[d.board()] *=
              chance(p, d, d.passesWith(), shift) - chance(p, d, d.passesWithout(), shift);
        }
        for (int b = 0; b < boards.length; b++) {
          boards[b] += all[b];
        }
      }
      return boards[0] * boards[1] * boards[2];
    }

    private static double chance(double[] p, CensoredPasses d, int passes, double shift) {
      if (passes == 0 || passes == CensoredPasses.NEVER) {
        return passes == 0 ? 0 : 1;
      }
      double margin = d.lnDose() + p[1] * d.lnIntensity() + p[2] * Math.log(passes) - p[0] - shift;
      return Logistic.cdf(margin / p[3]);
    }

    Estimate of(int parameter) {
      double[] values = draws.column(parameter);
      return new Estimate(
          WeightedDraws.quantile(values, draws.weights(), 0.5),
          WeightedDraws.quantile(values, draws.weights(), 0.05),
          WeightedDraws.quantile(values, draws.weights(), 0.95));
    }
  }

  /** Within a twentieth of the 90 % interval, as the reference strata are held. */
  private static void agrees(String what, Estimate ours, Estimate theirs) {
    double tolerance = 0.05 * (theirs.high() - theirs.low());
    assertThat(ours.low()).as(what + " 5 %").isCloseTo(theirs.low(), within(tolerance));
    assertThat(ours.median()).as(what + " median").isCloseTo(theirs.median(), within(tolerance));
    assertThat(ours.high()).as(what + " 95 %").isCloseTo(theirs.high(), within(tolerance));
  }

  private static void agrees(Posterior ours, Plain theirs) {
    agrees("tau", ours.tau(), theirs.of(0));
    agrees("phi", ours.phi(), theirs.of(1));
    agrees("psi", ours.psi(), theirs.of(2));
    agrees("sigma", ours.sigma(), theirs.of(3));
    agrees("omega", ours.omega(), theirs.of(4));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.6, 0.3, 0.15})
  void with_a_loan_it_is_the_mixture_of_both_priors(double lnSigmaSd) {
    Prior lent = lent(lnSigmaSd);
    ModelFit fit = fit(EIGHT, USUAL, lent, SHARE);
    agrees(fit.posterior(), Plain.of(USUAL, lent, SHARE, EIGHT));
  }

  /** With no trials the answer is known: two normals on ln σ. */
  @Test
  void without_trials_it_is_the_mixture_itself() {
    Prior lent = lent(0.15);
    Estimate sigma = fit(List.of(), USUAL, lent, SHARE).sigma();
    NormalDistribution own = new NormalDistribution(USUAL.lnSigma().mean(), 0.6);
    NormalDistribution others = new NormalDistribution(Math.log(0.25), 0.15);
    ToDoubleFunction<Double> below =
        s ->
            (1 - SHARE) * own.cumulativeProbability(Math.log(s))
                + SHARE * others.cumulativeProbability(Math.log(s));
    assertThat(below.applyAsDouble(sigma.low())).isCloseTo(0.05, within(0.01));
    assertThat(below.applyAsDouble(sigma.median())).isCloseTo(0.5, within(0.01));
    assertThat(below.applyAsDouble(sigma.high())).isCloseTo(0.95, within(0.01));
  }

  /** The others are sure of a transition far sharper than these patches show. */
  @Test
  void trials_that_deny_a_loan_leave_it_little_weight() {
    Prior sharp =
        new Prior(
            USUAL.tau(),
            USUAL.phi(),
            USUAL.psi(),
            new Prior.Normal(Math.log(0.1), 0.1),
            USUAL.omega());
    ModelFit fit = fit(BLURRED, USUAL, sharp, 0.8);
    assertThat(fit.borrowed().orElseThrow().weight()).isLessThan(0.4);
    agrees(fit.posterior(), Plain.of(USUAL, sharp, 0.8, BLURRED));
  }
}
