package charline.model.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.HalfNormalSpread;
import charline.model.ModelFit;
import charline.model.Prior;
import charline.model.PriorSet;
import charline.model.Trials;
import charline.stat.distribution.Logistic;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * O-rings of the space shuttle (Dalal, Fowlkes and Hoadley 1989, JASA 84:945-957, table 1; flight 4
 * left out as its booster was lost): any distress against the temperature at launch in degrees
 * Fahrenheit, colder for hotter. Every flight is left out in turn and its chance compared with the
 * integral over a grid of the two-parameter posterior of the 22 others.
 */
class ChallengerReferenceTest {
  private static final int[] TEMPERATURE = {
    66, 70, 69, 68, 67, 72, 73, 70, 57, 63, 70, 78, 67, 53, 67, 75, 70, 81, 76, 79, 75, 58, 76
  };
  private static final int[] DISTRESS = {
    0, 1, 0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 1, 0
  };
  private static final double TAU = 2.5;
  private static final double TAU_SD = 2;
  private static final double LN_SIGMA = Math.log(0.5);
  private static final double LN_SIGMA_SD = 1;

  private static double lnDose(int flight) {
    return (90 - TEMPERATURE[flight]) / 10.0;
  }

  private static Trials flights() {
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < TEMPERATURE.length; i++) {
      String code = "F-" + (i + 1);
      // 60 % of 200 W over 60 mm: a dose of D J/cm2 takes 200 / D mm/s.
      patches.add(
          InventedStratum.patch(
              code,
              0,
              60,
              200 / Math.exp(lnDose(i)),
              List.of(
                  InventedStratum.reading(
                      code, 1, Outcome.of(DISTRESS[i] == 1 ? Mark.CHAR : Mark.CLEAN)))));
    }
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  /** Chance of what flight {@code out} showed, given the others, by summing over a fine grid. */
  private static double exact(int out) {
    double total = 0;
    double seen = 0;
    for (double tau = -7.5; tau <= 12.5; tau += 0.04) {
      for (double lnSigma = LN_SIGMA - 5; lnSigma <= LN_SIGMA + 5; lnSigma += 0.04) {
        double log =
            -Math.pow((tau - TAU) / TAU_SD, 2) / 2
                - Math.pow((lnSigma - LN_SIGMA) / LN_SIGMA_SD, 2) / 2;
        for (int i = 0; i < TEMPERATURE.length; i++) {
          log += i == out ? 0 : logChance(i, tau, lnSigma);
        }
        total += Math.exp(log);
        seen += Math.exp(log + logChance(out, tau, lnSigma));
      }
    }
    return seen / total;
  }

  private static double logChance(int flight, double tau, double lnSigma) {
    double z = (lnDose(flight) - tau) / Math.exp(lnSigma);
    return Logistic.logCdf(DISTRESS[flight] == 1 ? z : -z);
  }

  @Test
  void every_flight_left_out_is_given_the_chance_of_direct_integration() {
    Prior prior =
        new Prior(
            new Prior.Normal(TAU, TAU_SD),
            new Prior.Weight(0.4, 0.4, 0),
            new Prior.Weight(0.6, 0.35, 0),
            new Prior.Normal(LN_SIGMA, LN_SIGMA_SD),
            new HalfNormalSpread(1e-4));
    Fitter fitter = new Fitter(2026, PriorSet.alike(prior, prior));
    Trials flights = flights();
    ModelFit fit = fitter.fit(flights, Event.CHAR);
    FitChecks checks = new FitChecker(fitter).check(flights, fit);
    double logScore = 0;
    for (int i = 0; i < TEMPERATURE.length; i++) {
      double exact = exact(i);
      logScore += Math.log(exact);
      assertThat(checks.patches().get(i).asSeen())
          .as("flight at " + TEMPERATURE[i])
          .isCloseTo(exact, within(0.012));
    }
    assertThat(checks.logScore()).isCloseTo(logScore, within(0.15));
  }
}
