package charline.model.classical;

import charline.model.Event;
import charline.stat.distribution.Logistic;
import charline.stat.interval.FiellerSet;
import charline.stat.linear.Design;
import charline.stat.survival.LogLogisticFit;
import charline.stat.survival.LogLogisticOutcome;
import charline.stat.survival.LogLogisticOutcome.NoLogLogisticFit;
import charline.stat.survival.LogLogisticRegression;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Log-logistic accelerated failure time on passes: ln n = mu + b1 ln D + b2 ln(F/F0) + scale e, e
 * standard logistic, the passes to the event known to lie between two readings. Coefficients are
 * changes of ln passes; the last is the scale. Limits of doses are Fieller's, of passes by the
 * delta method.
 */
record AcceleratedFitted(Columns columns, List<String> names, LogLogisticFit fit, double lnDose)
    implements Fitted {

  static Attempt fit(PatchRows rows, int leftOut) {
    Columns columns = rows.columns();
    if (!columns.have(Columns.PASSES)) {
      return Attempt.failed(
          "A fit of passes needs patches read after different numbers of passes, independently of"
              + " dose, but these were not; read some after more passes, or ask for ml or firth.");
    }
    List<String> names = columns.names().stream().filter(n -> !n.equals(Columns.PASSES)).toList();
    Design design =
        names.isEmpty()
            ? Design.interceptOnly(rows.patchesBut(leftOut).length)
            : Design.withIntercept(names, rows.byPatch(names, leftOut));
    LogLogisticOutcome outcome =
        LogLogisticRegression.withDefaults().fit(design, rows.times(leftOut));
    return outcome instanceof LogLogisticFit fit
        ? Attempt.done(new AcceleratedFitted(columns, names, fit, rows.middleLnDose()))
        : Attempt.failed(((NoLogLogisticFit) outcome).message());
  }

  @Override
  public List<Coefficient> coefficients() {
    List<Coefficient> all = new ArrayList<>(fit.terms().stream().map(Coefficient::wald).toList());
    double reach = Coefficient.normalQuantile(ClassicalRegression.LIMITS) * fit.logScaleError();
    all.add(
        new Coefficient(
            ClassicalFit.SCALE,
            fit.scale(),
            fit.scale() * fit.logScaleError(),
            Limits.between(fit.scale() * Math.exp(-reach), fit.scale() * Math.exp(reach))));
    return List.copyOf(all);
  }

  @Override
  public String limitsBy() {
    return "Wald";
  }

  @Override
  public double chance(double[] covariates) {
    double[] others = new double[names.size() + 1];
    others[0] = 1;
    for (int j = 1; j < others.length; j++) {
      others[j] = covariates[1 + columns.names().indexOf(names.get(j - 1))];
    }
    double lnPasses = covariates[1 + columns.names().indexOf(Columns.PASSES)];
    return fit.shareBy(Math.exp(lnPasses), others);
  }

  /** Where scale q + mu + b1 ln D is ln 1, with q the logistic quantile of the chance. */
  @Override
  public Optional<DoseAnswer> dose(double chance, double twoSided, Event event) {
    int along = 1 + names.indexOf(Columns.DOSE);
    if (along == 0) {
      return Optional.empty();
    }
    double noise = fit.scale() * Logistic.quantile(chance);
    double level = fit.terms().get(0).estimate() + noise;
    double slope = fit.terms().get(along).estimate();
    int scale = fit.terms().size();
    double[][] v = fit.covariance();
    return Optional.of(
        DoseAnswer.of(
            chance,
            -level / slope,
            Limits.ofLogs(
                FiellerSet.of(
                    level,
                    slope,
                    v[0][0] + 2 * noise * v[0][scale] + noise * noise * v[scale][scale],
                    v[0][along] + noise * v[along][scale],
                    v[along][along],
                    Coefficient.normalQuantile(twoSided))),
            slope < 0,
            event));
  }

  @Override
  public List<PassesByShare> passes(double... shares) {
    double[] middle = new double[names.size() + 1];
    middle[0] = 1;
    if (names.contains(Columns.DOSE)) {
      middle[1 + names.indexOf(Columns.DOSE)] = lnDose;
    }
    List<PassesByShare> all = new ArrayList<>();
    for (double share : shares) {
      LogLogisticFit.Quantile q = fit.quantile(share, ClassicalRegression.LIMITS, middle);
      all.add(new PassesByShare(share, Math.exp(lnDose), q.time(), Limits.of(q.wald(), x -> x)));
    }
    return List.copyOf(all);
  }
}
