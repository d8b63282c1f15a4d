package charline.model.classical;

import charline.model.Event;
import charline.model.Trials;
import charline.stat.distribution.Logistic;
import charline.stat.interval.FiellerSet;
import charline.stat.mixed.RandomInterceptFit;
import charline.stat.quadrature.NormalTrapezoid;
import java.util.Optional;

/**
 * Doses by the classical counterpart of the passes-to-event model, a logistic regression of all
 * readings with a random intercept by board: the dose of a chance on a new board at any intensity
 * and number of passes, with Fieller's limits, which owe nothing to a prior.
 */
public final class MixedDose {
  private final Columns columns;
  private final RandomInterceptFit fit;
  private final double lnReference;

  private MixedDose(MixedFitted fitted, double lnReference) {
    columns = fitted.columns();
    fit = fitted.fit();
    this.lnReference = lnReference;
  }

  /** The fit of one event; empty where there is none, or where dose is not in it. */
  public static Optional<MixedDose> fit(Trials trials, Event event) {
    return MixedFitted.fit(new PatchRows(trials, event), PatchRows.NONE).fitted().stream()
        .map(MixedFitted.class::cast)
        .filter(fitted -> fitted.columns().have(Columns.DOSE))
        .map(fitted -> new MixedDose(fitted, trials.lnReferenceIntensity()))
        .findFirst();
  }

  /**
   * A limit of the ln dose at which the event has a chance on a new board.
   *
   * @param z normal quantile of the limit, above 0
   * @param lower the lower limit, else the upper
   * @return empty where there is no such limit
   */
  public Optional<Double> lnDose(
      double chance, double lnIntensity, int passes, double z, boolean lower) {
    int along = 1 + columns.names().indexOf(Columns.DOSE);
    int spread = fit.terms().size();
    double s = fit.standardDeviation();
    double m = middling(chance, s);
    double step = 1e-4 * Math.max(s, 1e-2);
    double bySpread = (middling(chance, s + step) - m) / step;
    // The level is a sum of coefficients: its gradient gives variance and covariance.
    double[] gradient = new double[fit.covariance().length];
    gradient[0] = 1;
    double level = fit.terms().get(0).estimate() - m;
    gradient[spread] = -bySpread;
    for (int j = 1; j < spread; j++) {
      String name = columns.names().get(j - 1);
      if (!name.equals(Columns.DOSE)) {
        gradient[j] = name.equals(Columns.PASSES) ? Math.log(passes) : lnIntensity - lnReference;
        level += gradient[j] * fit.terms().get(j).estimate();
      }
    }
    double variance = 0;
    double covariance = 0;
    double[][] v = fit.covariance();
    for (int i = 0; i < gradient.length; i++) {
      covariance += gradient[i] * v[i][along];
      for (int j = 0; j < gradient.length; j++) {
        variance += gradient[i] * gradient[j] * v[i][j];
      }
    }
    double slope = fit.terms().get(along).estimate();
    return slope > 0
            && FiellerSet.of(level, slope, variance, covariance, v[along][along], z)
                instanceof FiellerSet.Finite interval
        ? Optional.of(lower ? interval.lower() : interval.upper())
        : Optional.empty();
  }

  private static double middling(double chance, double s) {
    double away = 10 + Math.abs(Logistic.quantile(chance)) + 8 * s;
    double low = -away;
    double high = away;
    while (high - low > 1e-10 * away) {
      double m = 0.5 * (low + high);
      if (overBoards(m, s) < chance) {
        low = m;
      } else {
        high = m;
      }
    }
    return 0.5 * (low + high);
  }

  private static double overBoards(double predictor, double s) {
    NormalTrapezoid rule = NormalTrapezoid.forLogistic(1, s);
    double sum = 0;
    for (int q = 0; q < rule.points(); q++) {
      sum += rule.weight(q) * Logistic.cdf(predictor + s * rule.node(q));
    }
    return sum;
  }
}
