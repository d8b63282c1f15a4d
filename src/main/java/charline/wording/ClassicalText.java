package charline.wording;

import static charline.quantity.Figures.three;
import static charline.wording.Table.line;

import charline.answer.ClassicalAnswer;
import charline.answer.TrialCase;
import charline.model.Estimate;
import charline.model.Event;
import charline.model.classical.ClassicalChecks;
import charline.model.classical.ClassicalFit;
import charline.model.classical.ClassicalOutcome;
import charline.model.classical.ClassicalOutcome.NoClassicalFit;
import charline.model.classical.ClassicalOutcome.Separating;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Coefficient;
import charline.model.classical.Comparison;
import charline.model.classical.DoseAnswer;
import charline.model.classical.Limits;
import charline.quantity.Figures;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/** The classical view for a person. */
public record ClassicalText(
    TrialCase judged,
    ClassicalOutcome outcome,
    ClassicalRegression asked,
    Optional<Comparison> comparison) {
  /** A dose this many times outside what was tried is no number for anybody. */
  private static final double FAR = 1000;

  /** The words for an answer. */
  public static ClassicalText of(ClassicalAnswer answer) {
    return new ClassicalText(
        answer.subject(), answer.outcome(), answer.asked(), answer.comparison());
  }

  public String text() {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%s by %s, %s"
            .formatted(
                forChar() ? "Burn onset" : "Removal",
                outcome.method().words(),
                judged.trials().stratum().words()));
    line(text, "Counted: " + RigSetupText.counted(judged.trials().evidence()) + ".");
    line(text, "Fitted: " + outcome.rows() + ".");
    if (outcome instanceof NoClassicalFit none) {
      none.separation().ifPresent(s -> line(text, s.words()));
      line(text, none.reason());
      return text.toString();
    }
    ClassicalFit fit = (ClassicalFit) outcome;
    fit.notes().forEach(note -> line(text, note));
    text.append('\n').append(coefficients(fit)).append('\n');
    inTheModelsWords(fit, text);
    fit.boards().ifPresent(spread -> line(text, BoardSpreadText.sentence(spread)));
    if (!fit.passes().isEmpty()) {
      line(text, PassesByShareText.sentence(fit.passes(), fit.event()));
    }
    line(
        text,
        fit.separation()
            .map(Separating::words)
            .orElse("Outcomes overlap, so there is no separation and both fits are finite."));
    doses(fit, text);
    checks(fit.checks(), text);
    comparison.ifPresent(c -> text.append('\n').append(beside(fit, c)));
    return text.toString();
  }

  private String coefficients(ClassicalFit fit) {
    Table table =
        new Table("coefficient", ">estimate", ">std error", ">90 % " + fit.limitsBy() + " limits");
    for (Coefficient c : fit.coefficients()) {
      table.row(c.name(), three(c.estimate()), three(c.standardError()), limits(c.limits()));
    }
    return table.text()
        + Table.paragraph(
            "Scale: %s for each unit of the column; one unit of ln is a factor of 2.72. F0 is %s %s, the middle of the trials."
                .formatted(
                    fit.passes().isEmpty()
                        ? "log odds of " + event()
                        : "ln of the passes to " + event(),
                    three(fit.at().intensity()),
                    unit()))
        + "\n";
  }

  private void inTheModelsWords(ClassicalFit fit, StringBuilder text) {
    if (fit.sigma().isPresent()) {
      line(
          text,
          "As parameters of the model: sigma %s%s%s."
              .formatted(
                  three(fit.sigma().getAsDouble()),
                  weight(", phi ", fit.phi()),
                  weight(", psi ", fit.psi())));
    }
  }

  private static String weight(String name, OptionalDouble value) {
    return value.isPresent() ? name + three(value.getAsDouble()) : "";
  }

  private void doses(ClassicalFit fit, StringBuilder text) {
    if (fit.atRisk().isEmpty()) {
      line(text, "There is no dose to show, because here the risk does not change with dose.");
      return;
    }
    DoseAnswer dose = fit.atRisk().get();
    if (!dose.rising()) {
      line(
          text,
          "The fitted chance of %s FALLS as dose rises, contrary to all experience, so it gives no safe dose. Check for mistyped settings or swapped codes."
              .formatted(event()));
      return;
    }
    line(
        text,
        "%s %s %s of patches at %s J/cm2 per pass."
            .formatted(
                place(fit),
                (forChar() ? "char" : "clear") + (fit.at().passes() == 1 ? "s" : ""),
                share(dose.chance()),
                far(dose.doseJoulesPerCm2(), fit)));
    line(text, bound(fit, dose));
  }

  private static String place(ClassicalFit fit) {
    String passes = fit.at().passes() == 1 ? "One pass" : fit.at().passes() + " passes";
    return fit.at().movedAlong().isEmpty()
        ? passes + " at F0"
        : "%s, with %s changing along as in the trials,"
            .formatted(passes, String.join(" and ", fit.at().movedAlong()));
  }

  private String bound(ClassicalFit fit, DoseAnswer dose) {
    String sure = share(asked.confidence());
    String kept =
        forChar()
            ? "char risk is at most " + share(dose.chance())
            : "at least " + share(dose.chance()) + " of patches clear";
    if (dose.bound().isEmpty()) {
      return forChar()
          ? "Unbounded: there is no dose above 0 up to which %s with %s confidence; at that confidence, the trials agree with a risk that hardly depends on dose. More patches, further apart in dose, would bound it."
              .formatted(kept, sure)
          : "Unbounded: there is no dose from which %s with %s confidence; at that confidence, the trials agree with clearing that hardly depends on dose. More patches, further apart in dose, would bound it."
              .formatted(kept, sure);
    }
    double bound = dose.bound().getAsDouble();
    return "%s %s J/cm2 %s with %s confidence, on %s%s."
        .formatted(
            forChar() ? "Up to" : "From",
            far(bound, fit, safe()),
            kept,
            sure,
            fit.boards().isPresent() ? "a new board" : "boards like those tried",
            bound < fit.at().lowestDose() || bound > fit.at().highestDose()
                ? " (an untried dose: trials run from %s J/cm2)"
                    .formatted(Figures.inward(fit.at().lowestDose(), fit.at().highestDose()))
                : "");
  }

  private void checks(ClassicalChecks checks, StringBuilder text) {
    line(
        text,
        "Checks: Brier score %s over %s (the overall share alone: %s); leaving out one patch at a time: %s."
            .formatted(
                three(checks.brier()),
                Figures.count(checks.readings(), "reading", "readings"),
                three(checks.brierOfShare()),
                checks.brierLeftOut().isPresent()
                    ? three(checks.brierLeftOut().getAsDouble())
                    : checks.leftOutTrouble().orElse("-")));
    line(
        text,
        checks
            .hosmerLemeshow()
            .map(
                t ->
                    "Hosmer-Lemeshow, %d groups cut at quantiles: chi-square %s on %d, P %s%s."
                        .formatted(
                            t.groups(),
                            three(t.statistic()),
                            t.degreesOfFreedom(),
                            probability(t.probability()),
                            t.probability() < 0.05 ? " (the fit does not follow the trials)" : ""))
            .orElseGet(
                () -> "Hosmer-Lemeshow: " + checks.hosmerLemeshowTrouble().orElse("-") + "."));
  }

  private static String probability(double p) {
    return p < 0.001 ? "below 0.001" : p > 0.999 ? "above 0.999" : three(p);
  }

  private String beside(ClassicalFit fit, Comparison c) {
    StringBuilder text = new StringBuilder();
    Table table = new Table("J/cm2 per pass", ">classical", ">posterior");
    table.row(
        "even chance, 90 % interval",
        fit.even().filter(DoseAnswer::rising).map(d -> dose(d, fit)).orElse("-"),
        estimate(c.even()));
    table.row(
        share(asked.chance(fit.event())) + " chance",
        fit.atRisk()
            .filter(DoseAnswer::rising)
            .map(d -> far(d.doseJoulesPerCm2(), fit))
            .orElse("-"),
        three(c.atRisk().median()));
    table.row(
        "careful dose, " + share(asked.confidence()) + " sure",
        fit.atRisk()
            .filter(DoseAnswer::rising)
            .map(
                d ->
                    d.bound().isPresent() ? far(d.bound().getAsDouble(), fit, safe()) : "unbounded")
            .orElse("-"),
        safe().apply(c.bound()));
    text.append(table.text());
    String verdict =
        c.agreement()
            .map(
                a ->
                    switch (a) {
                      case AGREE -> "Classical fit and posterior agree on the even-chance dose";
                      case ROUGHLY ->
                          "Classical fit and posterior roughly agree: their intervals of the"
                              + " even-chance dose overlap, but do not both contain both middles";
                      case DISAGREE ->
                          "CLASSICAL FIT AND POSTERIOR DISAGREE on the even-chance dose";
                    })
            .orElse("There is no classical dose to compare");
    line(text, verdict + ". How they differ: " + String.join("; ", c.reasons()) + ".");
    line(
        text,
        "The posterior's last two rows are for a new board; a window rests on the posterior.");
    return text.toString();
  }

  private String dose(DoseAnswer dose, ClassicalFit fit) {
    return "%s (%s to %s)"
        .formatted(
            far(dose.doseJoulesPerCm2(), fit),
            dose.limits().low().isPresent()
                ? far(dose.limits().low().getAsDouble(), fit, Figures::threeDown)
                : "open",
            dose.limits().high().isPresent()
                ? far(dose.limits().high().getAsDouble(), fit, Figures::threeUp)
                : "open");
  }

  private static String estimate(Estimate e) {
    return "%s (%s)".formatted(three(e.median()), Figures.bounds(e.low(), e.high()));
  }

  private static String limits(Limits limits) {
    return "%s to %s"
        .formatted(
            limits.low().isPresent() ? Figures.threeDown(limits.low().getAsDouble()) : "unbounded",
            limits.high().isPresent() ? Figures.threeUp(limits.high().getAsDouble()) : "unbounded");
  }

  private static String far(double dose, ClassicalFit fit) {
    return far(dose, fit, Figures::three);
  }

  /** The side of a careful dose on which it stays careful. */
  private DoubleFunction<String> safe() {
    return forChar() ? Figures::threeDown : Figures::threeUp;
  }

  private static String far(double dose, ClassicalFit fit, DoubleFunction<String> shown) {
    return dose < fit.at().lowestDose() / FAR
        ? "below " + three(fit.at().lowestDose() / FAR)
        : dose > fit.at().highestDose() * FAR
            ? "above " + three(fit.at().highestDose() * FAR)
            : shown.apply(dose);
  }

  /** As it was asked for, not rounded for caution. */
  private static String share(double share) {
    return three(100 * share) + " %";
  }

  private boolean forChar() {
    return outcome.event() == Event.CHAR;
  }

  private String event() {
    return outcome.event().word();
  }

  private String unit() {
    return judged.trials().stratum().emission().intensityUnit();
  }
}
