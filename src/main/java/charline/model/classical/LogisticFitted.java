package charline.model.classical;

import charline.model.Event;
import charline.stat.inverse.Dose;
import charline.stat.inverse.DoseAtRisk;
import charline.stat.inverse.ProfileLimits;
import charline.stat.regression.BinomialFit;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.FitOutcome;
import charline.stat.regression.FitOutcome.NotConverged;
import java.util.List;
import java.util.Optional;

/** Logistic regression by (penalised) maximum likelihood, boards taken as one; profile limits. */
record LogisticFitted(Columns columns, BinomialFit fit) implements Fitted {

  static Attempt fit(BinomialRegression regression, PatchRows rows, int leftOut) {
    FitOutcome outcome = regression.fit(rows.sample(rows.allBut(leftOut)));
    return outcome instanceof BinomialFit fit
        ? Attempt.done(new LogisticFitted(rows.columns(), fit))
        : Attempt.failed(
            outcome instanceof NotConverged failure
                ? failure.message()
                : "The outcomes are separated.");
  }

  @Override
  public List<Coefficient> coefficients() {
    return new ProfileLimits(ClassicalRegression.LIMITS)
        .of(fit).stream()
            .map(
                p ->
                    new Coefficient(
                        Columns.plainIntercept(p.name()),
                        fit.term(p.name()).estimate(),
                        fit.term(p.name()).standardError(),
                        Limits.of(p.interval(), x -> x)))
            .toList();
  }

  @Override
  public String limitsBy() {
    return "profile";
  }

  @Override
  public double chance(double[] covariates) {
    return fit.riskAt(covariates);
  }

  @Override
  public Optional<DoseAnswer> dose(double chance, double twoSided, Event event) {
    if (!columns.have(Columns.DOSE)) {
      return Optional.empty();
    }
    DoseAtRisk asked = DoseAtRisk.of(Columns.DOSE, chance).withConfidence(twoSided);
    for (String name : columns.names()) {
      asked = name.equals(Columns.DOSE) ? asked : asked.given(name, 0); // F0, one pass
    }
    return asked.estimate(fit) instanceof Dose dose
        ? Optional.of(
            DoseAnswer.of(
                chance,
                dose.estimate(),
                Limits.of(dose.profile(), Math::exp),
                dose.slope() > 0,
                event))
        : Optional.empty();
  }
}
