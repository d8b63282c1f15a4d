package charline.paper;

import charline.model.Lender;
import charline.model.ModelFit;
import charline.paper.SheetPage.Line;
import charline.quantity.Figures;
import charline.window.Box;
import charline.window.CharredSpots;
import charline.window.Forecast;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.wording.PieceText;
import charline.wording.ProvisoText;
import charline.wording.RigSetupText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How sure the sheet is and on how much evidence, raw counts first. */
record ConfidenceWords(Recommendation recommendation) {
  List<Line> lines(Optional<JobRisk> job) {
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("Counted", RigSetupText.counted(recommendation.evidence()) + "."));
    Optional<Box> chosen = WindowSheet.box(recommendation);
    chosen.ifPresentOrElse(box -> lines.addAll(window(box)), () -> noBox(lines));
    lines.add(new Line("Asked for", asked()));
    ProvisoText.of(recommendation).forEach(words -> lines.add(new Line("Mind", words)));
    borrowed().ifPresent(words -> lines.add(new Line("Borrowed", words)));
    job.filter(j -> chosen.isPresent()).ifPresent(j -> lines.add(new Line("Whole job", job(j))));
    return lines;
  }

  /** What other trials lent to either model, if anything. */
  private Optional<String> borrowed() {
    List<String> parts = new ArrayList<>();
    for (Optional<ModelFit> fit : List.of(recommendation.charFit(), recommendation.clearingFit())) {
      fit.flatMap(ModelFit::borrowed)
          .ifPresent(
              used ->
                  parts.add(
                      "%s from %s other patches, weight %s"
                          .formatted(
                              fit.get().event().word(),
                              used.lenders().stream().mapToInt(Lender::patches).sum(),
                              Figures.percent(used.weight()))));
    }
    return parts.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", parts) + ".");
  }

  private String spots(Forecast forecast) {
    CharredSpots spots = recommendation.charredSpots(forecast);
    return "%s charred spots per m², at most %s"
        .formatted(Figures.three(spots.mean()), Figures.threeUp(spots.upper()));
  }

  private List<Line> window(Box box) {
    return List.of(
        new Line(
            "At the start",
            "char %s, at most %s (%s); clears %s, at least %s."
                .formatted(
                    Figures.percent(box.start().charRiskMean()),
                    Figures.atMost(box.start().charRiskUpper()),
                    spots(box.start()),
                    Figures.percent(box.start().clearChanceMean()),
                    Figures.atLeast(box.start().clearChanceLower()))),
        new Line(
            "Inside the box",
            "char at most %s, %s (most power, slowest); clears at least %s (least power, fastest)."
                .formatted(
                    Figures.atMost(box.hotCorner().charRiskUpper()),
                    "at most %s spots per m²"
                        .formatted(
                            Figures.threeUp(recommendation.charredSpots(box.hotCorner()).upper())),
                    Figures.atLeast(box.coldCorner().clearChanceLower()))));
  }

  private void noBox(List<Line> lines) {
    if (Double.isFinite(recommendation.chanceAnyWindow())) {
      lines.add(
          new Line(
              "Any setting",
              "chance that one keeps both promises: "
                  + Figures.percent(recommendation.chanceAnyWindow())
                  + "."));
    }
  }

  private String asked() {
    Requirements asked = recommendation.asked();
    return "char %s at most, clearing %s at least%s, each with %s confidence, per %s on %s."
        .formatted(
            Figures.share(asked.charRisk()),
            Figures.share(asked.clearChance()),
            asked.acceptTint() ? " (tint counts as cleared)" : "",
            Figures.share(asked.confidence()),
            patchSize(),
            PieceText.board(recommendation));
  }

  private String patchSize() {
    return recommendation.medianPatchSquareCentimetres().isPresent()
        ? Figures.significant(recommendation.medianPatchSquareCentimetres().getAsDouble(), 2)
            + " cm²"
        : Figures.shortest(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES) + " cm² (size not logged)";
  }

  /** The dose of one pass with an even chance of either event, with its 90 % interval. */
  Optional<Line> evenChance() {
    List<String> parts = new ArrayList<>();
    recommendation.charFit().ifPresent(f -> parts.add("char " + dose(f)));
    recommendation.clearingFit().ifPresent(f -> parts.add("clearing " + dose(f)));
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Line("Even chance", "in one pass, " + String.join("; ", parts) + "."));
  }

  private static String dose(ModelFit fit) {
    return "%s J/cm² (%s to %s)"
        .formatted(
            Figures.decimals(fit.evenDoseJoulesPerCm2().median(), 1),
            Figures.decimalsDown(fit.evenDoseJoulesPerCm2().low(), 1),
            Figures.decimalsUp(fit.evenDoseJoulesPerCm2().high(), 1));
  }

  private static String job(JobRisk job) {
    return "%s m² is %s: any char %s, at most %s%s; charred areas %s, at most %s."
        .formatted(
            Figures.shortest(job.areaSquareMetres()),
            Figures.count(job.areas(), "area", "areas"),
            Figures.percent(job.mean()),
            Figures.atMost(job.upper()),
            job.asked().isPresent()
                ? " (asked: " + Figures.share(job.asked().getAsDouble()) + ")"
                : "",
            marks(job.marksMean()),
            Figures.decimalsUp(job.marksUpper(), 0));
  }

  private static String marks(double marks) {
    return marks < 0.5 ? "none" : "about " + Figures.decimals(marks, 0);
  }
}
