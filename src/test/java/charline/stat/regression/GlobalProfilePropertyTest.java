package charline.stat.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.stat.interval.Bound;
import charline.stat.inverse.Dose;
import charline.stat.inverse.DoseAtRisk;
import charline.stat.linear.Design;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Dose limits of small penalised fits against a grid over the slope, the penalty straight from the
 * two-by-two determinant: nothing is shared with the code under test. Small samples are where the
 * profile has two maxima, stretches of rejected doses and no bounds at all.
 */
class GlobalProfilePropertyTest {
  private static final double LOGIT = Math.log(0.05 / 0.95);
  private static final double ACCEPTED = 2.705543454095;
  private static final int GRID = 600;

  private record Sample(double[] dose, int[] outcomes) {
    @Override
    public String toString() {
      return Arrays.toString(dose) + " " + Arrays.toString(outcomes);
    }

    double objective(double intercept, double slope) {
      double[] weight = new double[dose.length];
      double value = 0;
      double total = 0;
      double moment = 0;
      for (int i = 0; i < dose.length; i++) {
        double eta = intercept + slope * dose[i];
        double tail = Math.exp(-Math.abs(eta));
        value += outcomes[i] * eta - Math.max(eta, 0) - Math.log1p(tail);
        weight[i] = tail / ((1 + tail) * (1 + tail));
        total += weight[i];
        moment += weight[i] * dose[i];
      }
      double spread = 0;
      for (int i = 0; i < dose.length; i++) {
        double d = dose[i] - moment / total;
        spread += weight[i] * d * d;
      }
      double determinant = total * spread;
      return determinant > 0 ? value + 0.5 * Math.log(determinant) : -1e300;
    }

    /** The highest objective of all fits whose risk at a dose is 5 %. */
    double highest(double at) {
      double[] slopes =
          IntStream.rangeClosed(-GRID, GRID)
              .mapToDouble(k -> 120 * Math.sinh(6.0 * k / GRID) / Math.sinh(6))
              .toArray();
      double[] values = Arrays.stream(slopes).map(b -> objective(LOGIT - b * at, b)).toArray();
      double highest = -1e300;
      for (int k = 1; k < slopes.length - 1; k++) {
        if (values[k] >= values[k - 1] && values[k] >= values[k + 1] && values[k] > -1e200) {
          highest =
              Math.max(
                  highest,
                  new BrentOptimizer(1e-10, 1e-14)
                      .optimize(
                          new MaxEval(300),
                          GoalType.MAXIMIZE,
                          new UnivariateObjectiveFunction(b -> objective(LOGIT - b * at, b)),
                          new SearchInterval(slopes[k - 1], slopes[k + 1], slopes[k]))
                      .getValue());
        }
      }
      return highest;
    }
  }

  static List<Sample> samples() {
    Random random = new Random(11);
    return IntStream.range(0, 40).mapToObj(trial -> sample(random)).toList();
  }

  private static Sample sample(Random random) {
    int rows = 4 + random.nextInt(12);
    boolean ties = random.nextBoolean();
    double steepness = 3 * random.nextGaussian();
    double[] dose = new double[rows];
    int[] outcomes = new int[rows];
    for (int i = 0; i < rows; i++) {
      dose[i] = ties ? random.nextInt(6) + 1e-3 * i : 3 + 2 * random.nextGaussian();
      double eta = steepness * (dose[i] - 3 - random.nextGaussian()) - 1;
      outcomes[i] = random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
    }
    return new Sample(dose, outcomes);
  }

  @ParameterizedTest
  @MethodSource("samples")
  void limits_end_the_stretch_of_doses_that_a_grid_accepts(Sample sample) {
    BinomialFit fit =
        (BinomialFit)
            BinomialRegression.withDefaults()
                .with(Estimator.FIRTH_PENALISED)
                .fit(
                    BinomialSample.of(
                        Design.withIntercept(List.of("dose"), sample.dose()), sample.outcomes()));
    Dose dose = (Dose) DoseAtRisk.of("dose", 0.05).estimate(fit);

    for (int side = 0; side < 2; side++) {
      Bound bound = side == 0 ? dose.profile().lower() : dose.profile().upper();
      double far = Math.max(200, 10 * Math.abs(dose.estimate()));
      double end = dose.estimate() + (side == 0 ? -far : far);
      if (bound instanceof Bound.At at) {
        end = at.value();
        assertThat(drop(sample, fit, end))
            .as("drop at " + bound)
            .isCloseTo(ACCEPTED, within(1e-5 * Math.max(1, Math.abs(end) / 100)));
      }
      for (int k = 1; k < 40; k++) {
        double inside = dose.estimate() + (end - dose.estimate()) * k / 40;
        assertThat(drop(sample, fit, inside))
            .as("drop at %s, between the estimate and %s", inside, bound)
            .isLessThan(ACCEPTED + 1e-4);
      }
    }
  }

  private static double drop(Sample sample, BinomialFit fit, double dose) {
    return 2 * (fit.objective() - sample.highest(dose));
  }
}
