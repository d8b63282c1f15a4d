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
 * The sturdier view of a fit, with and without a loan, against computations that know nothing of
 * re-weighting: draws from the sturdier priors weighted by a plainly written likelihood, and fits
 * made under the sturdier priors from the start.
 */
class SturdierPriorReferenceTest {
  /** The usual prior but for a narrower τ, so that many draws from it fit the patches. */
  private static final Prior USUAL =
      new Prior(
          new Prior.Normal(3, 0.6),
          Prior.usual(Event.CHAR, Emission.PULSED).phi(),
          Prior.usual(Event.CHAR, Emission.PULSED).psi(),
          Prior.usual(Event.CHAR, Emission.PULSED).lnSigma(),
          Prior.usual(Event.CHAR, Emission.PULSED).omega());

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

  private static ModelFit alone(List<CensoredPasses> data, Prior prior) {
    return Fitter.withDefaults().fit(data, 0, Event.CHAR, prior);
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
  void with_a_loan_it_is_the_mixture_of_the_sturdier_priors(double lnSigmaSd) {
    Prior lent = lent(lnSigmaSd);
    ModelFit fit = fit(EIGHT, USUAL, lent, SHARE);
    agrees(fit.posterior(), Plain.of(USUAL, lent, SHARE, EIGHT));
    agrees(fit.sturdier(), Plain.of(USUAL.sturdier(), lent.sturdier(), SHARE, EIGHT));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.6, 0.15, 0.1})
  void it_is_what_a_fit_under_the_sturdier_priors_finds(double lnSigmaSd) {
    Prior lent = lent(lnSigmaSd);
    Posterior made = fit(EIGHT, USUAL.sturdier(), lent.sturdier(), SHARE).posterior();
    Posterior weighted = fit(EIGHT, USUAL, lent, SHARE).sturdier();
    agrees("tau", weighted.tau(), made.tau());
    agrees("sigma", weighted.sigma(), made.sigma());
    agrees("omega", weighted.omega(), made.omega());
    // Risk on a new board, 2 passes at a dose where it is small: what promises are made of.
    double dose = Math.exp(2);
    assertThat(risk(weighted, dose)).isCloseTo(risk(made, dose), within(0.05 * risk(made, dose)));
  }

  private static double risk(Posterior posterior, double dose) {
    return posterior.quantile(posterior.newBoardChance(dose, 1, 2), 0.9);
  }

  /** All but lent: the loan's prior and a fitter's own of the same kind are made sturdier alike. */
  @ParameterizedTest
  @ValueSource(doubles = {0.6, 0.3, 0.15})
  void a_loan_widens_as_a_prior_of_its_own_does(double lnSigmaSd) {
    Prior prior = lent(lnSigmaSd);
    ModelFit own = alone(EIGHT, prior);
    ModelFit lent = fit(EIGHT, USUAL, prior, 1 - 1e-6);
    ToDoubleFunction<ModelFit> widened = f -> f.sturdier().sigma().median() / f.sigma().median();
    assertThat(widened.applyAsDouble(own)).isGreaterThan(1.1);
    assertThat(widened.applyAsDouble(lent)).isCloseTo(widened.applyAsDouble(own), within(0.005));
  }

  /** With no trials the answer is known: two normals on ln σ, each moved by ln 1.25. */
  @Test
  void without_trials_it_is_the_prior_itself_made_sturdier() {
    Prior lent = lent(0.15);
    Estimate sigma = fit(List.of(), USUAL, lent, SHARE).sturdier().sigma();
    NormalDistribution own = new NormalDistribution(Math.log(0.25 * 1.25), 0.6);
    NormalDistribution others = new NormalDistribution(Math.log(0.25 * 1.25), 0.15);
    ToDoubleFunction<Double> below =
        s ->
            (1 - SHARE) * own.cumulativeProbability(Math.log(s))
                + SHARE * others.cumulativeProbability(Math.log(s));
    assertThat(below.applyAsDouble(sigma.low())).isCloseTo(0.05, within(0.01));
    assertThat(below.applyAsDouble(sigma.median())).isCloseTo(0.5, within(0.01));
    assertThat(below.applyAsDouble(sigma.high())).isCloseTo(0.95, within(0.01));
  }

  /**
   * The others are sure of a transition far sharper than these patches show. Made sturdier they are
   * less far off, so that the trials leave them more weight: the weight has to be found anew.
   */
  @Test
  void the_weight_of_a_loan_follows_what_the_sturdier_priors_make_likely() {
    Prior sharp =
        new Prior(
            USUAL.tau(),
            USUAL.phi(),
            USUAL.psi(),
            new Prior.Normal(Math.log(0.2), 0.15),
            USUAL.omega());
    double trusted = 0.8;
    ModelFit fit = fit(BLURRED, USUAL, sharp, trusted);
    ModelFit made = fit(BLURRED, USUAL.sturdier(), sharp.sturdier(), trusted);
    double before = fit.borrowed().orElseThrow().weight();
    double after = made.borrowed().orElseThrow().weight();
    assertThat(after).isGreaterThan(before + 0.1);
    agrees(fit.sturdier(), Plain.of(USUAL.sturdier(), sharp.sturdier(), trusted, BLURRED));
  }
}
