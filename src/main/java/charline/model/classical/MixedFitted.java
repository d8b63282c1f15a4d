package charline.model.classical;

import charline.model.Event;
import charline.stat.distribution.Logistic;
import charline.stat.interval.FiellerSet;
import charline.stat.linear.Term;
import charline.stat.mixed.RandomIntercept;
import charline.stat.mixed.RandomInterceptFit;
import charline.stat.mixed.RandomInterceptOutcome;
import charline.stat.mixed.RandomInterceptOutcome.NoRandomInterceptFit;
import charline.stat.quadrature.NormalTrapezoid;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Logistic regression with a random intercept by board. It has the rows and brackets of the plain
 * fit: a board's intercept moves both readings of a bracket alike, so that their joint chance stays
 * exact, where independent rows would flatten every slope.
 *
 * <p>Chances and doses are for a board not seen before: the intercept is integrated out, with m the
 * log odds whose mean chance over boards is the one asked for, and ln dose = (m - b0) / b1. Its
 * limits are Fieller's, with the covariance of b0, b1 and the standard deviation.
 */
record MixedFitted(Columns columns, RandomInterceptFit fit) implements Fitted {

  static Attempt fit(PatchRows rows, int leftOut) {
    int[] kept = rows.allBut(leftOut);
    List<String> boards = rows.boards(kept);
    if (boards.stream().distinct().count() < 2) {
      return Attempt.failed(
          "A random intercept by board needs patches on at least 2 boards, but all are on '%s'; burn some on another board, or ask for ml or firth."
              .formatted(boards.get(0)));
    }
    RandomInterceptOutcome outcome = RandomIntercept.withDefaults().fit(rows.sample(kept), boards);
    return outcome instanceof RandomInterceptFit fit
        ? Attempt.done(new MixedFitted(rows.columns(), fit))
        : Attempt.failed(reason((NoRandomInterceptFit) outcome));
  }

  private static String reason(NoRandomInterceptFit none) {
    return none.cause() == NoRandomInterceptFit.Cause.DEVIATION_UNBOUNDED
        ? "There is no most likely spread between boards: the more boards may differ, the better"
            + " the fit, without end, because once every board has its own shift a step in dose"
            + " explains nearly every patch; burn doses closer to the change on every board, or ask"
            + " for ml or firth."
        : none.message();
  }

  @Override
  public List<Coefficient> coefficients() {
    return fit.terms().stream().map(Coefficient::wald).toList();
  }

  @Override
  public String limitsBy() {
    return "Wald";
  }

  @Override
  public double chance(double[] covariates) {
    double predictor = 0;
    for (int j = 0; j < covariates.length; j++) {
      predictor += covariates[j] * fit.terms().get(j).estimate();
    }
    return overBoards(predictor);
  }

  private double overBoards(double predictor) {
    double s = fit.standardDeviation();
    NormalTrapezoid rule = NormalTrapezoid.forLogistic(1, s);
    double sum = 0;
    for (int q = 0; q < rule.points(); q++) {
      sum += rule.weight(q) * Logistic.cdf(predictor + s * rule.node(q));
    }
    return sum;
  }

  /** The log odds m on a middling board whose mean chance over boards is as given; by halving. */
  private double middling(double chance) {
    double away = 10 + Math.abs(Logistic.quantile(chance)) + 8 * fit.standardDeviation();
    double low = -away;
    double high = away;
    while (high - low > 1e-12 * away) {
      double m = 0.5 * (low + high);
      if (overBoards(m) < chance) {
        low = m;
      } else {
        high = m;
      }
    }
    return 0.5 * (low + high);
  }

  /** dm/ds = -E u L'(m + s u) / E L'(m + s u). */
  private double slopeOfMiddling(double m) {
    double s = fit.standardDeviation();
    NormalTrapezoid rule = NormalTrapezoid.forLogistic(1, s);
    double pull = 0;
    double weight = 0;
    for (int q = 0; q < rule.points(); q++) {
      double p = Logistic.cdf(m + s * rule.node(q));
      pull += rule.weight(q) * rule.node(q) * p * (1 - p);
      weight += rule.weight(q) * p * (1 - p);
    }
    return -pull / weight;
  }

  @Override
  public Optional<DoseAnswer> dose(double chance, double twoSided, Event event) {
    if (!columns.have(Columns.DOSE)) {
      return Optional.empty();
    }
    int along = 1 + columns.names().indexOf(Columns.DOSE);
    int spread = fit.terms().size();
    double m = middling(chance);
    double bySpread = slopeOfMiddling(m);
    double[][] v = fit.covariance();
    double level = fit.terms().get(0).estimate() - m;
    double slope = fit.terms().get(along).estimate();
    return Optional.of(
        DoseAnswer.of(
            chance,
            -level / slope,
            Limits.ofLogs(
                FiellerSet.of(
                    level,
                    slope,
                    v[0][0] - 2 * bySpread * v[0][spread] + bySpread * bySpread * v[spread][spread],
                    v[0][along] - bySpread * v[along][spread],
                    v[along][along],
                    Coefficient.normalQuantile(twoSided))),
            slope > 0,
            event));
  }

  @Override
  public Optional<BoardSpread> boards() {
    double s = fit.standardDeviation();
    double reach =
        Coefficient.normalQuantile(ClassicalRegression.LIMITS) * fit.logStandardDeviationError();
    double slope =
        fit.terms().stream()
            .filter(t -> t.name().equals(Columns.DOSE))
            .mapToDouble(Term::estimate)
            .findFirst()
            .orElse(0);
    return Optional.of(
        new BoardSpread(
            fit.groups(),
            s,
            fit.singular()
                ? new Limits(OptionalDouble.empty(), OptionalDouble.empty())
                : new Limits(
                    OptionalDouble.of(s * Math.exp(-reach)),
                    OptionalDouble.of(s * Math.exp(reach))),
            slope > 0 ? OptionalDouble.of(s / slope) : OptionalDouble.empty()));
  }
}
