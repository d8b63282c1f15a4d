package charline.wording;

import static charline.quantity.Figures.three;
import static charline.wording.Table.line;

import charline.answer.BoardPriors;
import charline.answer.ModelAnswer;
import charline.answer.TrialCase;
import charline.exposure.Emission;
import charline.model.Estimate;
import charline.model.Event;
import charline.model.ModelFit;
import charline.model.PieceFit;
import charline.model.check.FitChecks;
import charline.quantity.Figures;
import charline.window.JobRisk;
import charline.window.Requirements;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;

/**
 * One fitted model for a person: counts, parameters with intervals, and what they mean.
 *
 * @param judged trials and bench
 * @param fit the model
 * @param checks how well it fits
 * @param boards what was likely of omega before the trials
 * @param piece what the patches of a piece changed, where it is for one
 */
public record ModelText(
    TrialCase judged,
    ModelFit fit,
    FitChecks checks,
    BoardPriors boards,
    Optional<PieceFit> piece) {
  /** From 5 % to 95 % of a logistic curve is this many times its spread. */
  private static final double FIVE_TO_NINETY_FIVE = 2 * Math.log(19);

  /** The words for an answer. */
  public static ModelText of(ModelAnswer answer) {
    return new ModelText(
        answer.subject(), answer.fit(), answer.checks(), answer.boards(), answer.piece());
  }

  /** What it rests on, a sentence each. */
  public List<String> basis() {
    List<String> all = new ArrayList<>();
    all.add("Counted: " + RigSetupText.counted(judged.trials().evidence()) + ".");
    PlaceText.notCounted(judged).ifPresent(all::add);
    piece.ifPresent(own -> all.add(PieceText.of(judged.piece().orElseThrow(), own)));
    WayText.of(fit, judged.trials().patches()).ifPresent(all::add);
    BorrowText.of(fit).ifPresent(all::add);
    BasisText.of(judged.question()).ifPresent(all::add);
    all.add(BoardPriorText.of(boards, fit.event()));
    return all;
  }

  public String text() {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%s, %s"
            .formatted(
                fit.event() == Event.CHAR ? "Burn onset" : "Removal",
                judged.trials().stratum().words()));
    basis().forEach(sentence -> line(text, sentence));
    text.append('\n').append(parameters()).append('\n');
    meaning().forEach(sentence -> line(text, sentence));
    checks(text);
    return text.toString();
  }

  private String parameters() {
    Table table = new Table("parameter", ">middle", ">90 % interval", "what it is");
    row(table, "even-chance dose", fit.evenDoseJoulesPerCm2(), "J/cm2 in one pass");
    row(table, "tau", fit.tau(), "logarithm of that dose");
    row(table, "phi", fit.phi(), "weight of ln " + intensityWord());
    row(table, "psi", fit.psi(), "weight of ln passes");
    row(table, "sigma", fit.sigma(), "spread from patch to patch, in ln dose");
    row(table, "omega", fit.omega(), "spread from board to board, in ln dose");
    WayText.rows(fit, (name, estimate, what) -> row(table, name, estimate, what));
    return table.text();
  }

  private static void row(Table table, String name, Estimate e, String what) {
    table.row(name, three(e.median()), Figures.bounds(e.low(), e.high()), what);
  }

  /** What the model says in plain words, a sentence or two each. */
  public List<String> meaning() {
    List<String> all = new ArrayList<>();
    String happens = fit.event() == Event.CHAR ? "chars" : "clears";
    all.add(
        "One pass of %s J/cm2 at %s %s %s a patch on an average board as often as not."
            .formatted(
                three(fit.evenDoseJoulesPerCm2().median()),
                three(fit.referenceIntensity()),
                unit(),
                happens));
    all.add(
        "A second pass counts as %s times the dose; twice the %s at the same dose counts as %s times."
            .formatted(
                three(Math.pow(2, fit.psi().median())),
                intensityWord(),
                three(Math.pow(2, fit.phi().median()))));
    all.add(
        "On one board it takes %s times the dose to go from 5 %% to 95 %% of patches; one board in three differs from the average by more than a factor of %s."
            .formatted(
                three(Math.exp(FIVE_TO_NINETY_FIVE * fit.sigma().median())),
                three(Math.exp(fit.omega().median()))));
    double lnIntensity = Math.log(fit.referenceIntensity());
    boolean forChar = fit.event() == Event.CHAR;
    Requirements asked = judged.question().asked();
    double share = forChar ? asked.charRisk() : asked.clearChance();
    double dose = Math.exp(fit.lnPromisedDose(share, asked.confidence(), lnIntensity, 1));
    all.add(
        (forChar
                ? "Up to %s J/cm2 in one pass there, char risk on %s is at most %s with %s"
                    + " confidence%s: in single strokes %s."
                : "From %s J/cm2 in one pass there, a patch on %s clears in at least %s of"
                    + " cases with %s confidence%s.%s")
            .formatted(
                forChar ? Figures.threeDown(dose) : Figures.threeUp(dose),
                PieceText.board(judged.piece()),
                Figures.percent(share),
                Figures.percent(asked.confidence()),
                untried(dose),
                forChar ? SpotsText.atMost(share, patchSquareCentimetres()) : ""));
    return all;
  }

  private double patchSquareCentimetres() {
    return judged
        .trials()
        .medianPatchSquareCentimetres()
        .orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES);
  }

  /** Says so where a dose lies outside what was burned: there the model only extends its line. */
  private String untried(double dose) {
    DoubleSummaryStatistics tried =
        judged.trials().patches().stream()
            .mapToDouble(patch -> patch.exposure().doseJoulesPerCm2())
            .summaryStatistics();
    return dose >= tried.getMin() && dose <= tried.getMax()
        ? ""
        : " (an untried dose: trials run from %s J/cm2)"
            .formatted(Figures.inward(tried.getMin(), tried.getMax()));
  }

  private void checks(StringBuilder text) {
    line(
        text,
        "Computed by %s: %s draws worth %s independent ones."
            .formatted(fit.method(), fit.draws(), Math.round(fit.effectiveDraws())));
    text.append('\n').append(new CheckText(checks).text());
  }

  private String intensityWord() {
    return judged.pulsed() ? "fluence" : "irradiance";
  }

  private String unit() {
    return (judged.pulsed() ? Emission.PULSED : Emission.CONTINUOUS).intensityUnit();
  }
}
