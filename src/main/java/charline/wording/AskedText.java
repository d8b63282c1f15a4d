package charline.wording;

import charline.quantity.Figures;
import charline.window.JobLimit;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Requirements;
import java.util.Optional;

/** What a window has to keep, and what that comes to over a job, in words. */
public final class AskedText {
  private AskedText() {}

  /** The limits of an answer, with the charred spots per m² that they allow. */
  public static String of(Recommendation found) {
    Requirements asked = found.asked();
    return "char risk at most %s (%s) and clearing at least %s%s, each with %s confidence, per %s on %s%s."
        .formatted(
            Figures.share(asked.charRisk()),
            SpotsText.atMost(asked.charRisk(), found.patchSquareCentimetres()),
            Figures.share(asked.clearChance()),
            asked.acceptTint() ? " (tint accepted)" : "",
            Figures.share(asked.confidence()),
            patchSize(found),
            PieceText.board(found),
            found.bench().strokes().overlap() == 0 ? "" : ", seams of the strokes counted");
  }

  private static String patchSize(Recommendation found) {
    return found.medianPatchSquareCentimetres().isPresent()
        ? Figures.three(found.medianPatchSquareCentimetres().getAsDouble()) + " cm²"
        : "patch-sized area (taken as %s cm²)"
            .formatted(Figures.three(found.patchSquareCentimetres()));
  }

  /** The limit of a job, as carried over to one area; empty where none was asked for. */
  public static Optional<String> of(Recommendation found, Optional<JobLimit> job) {
    return job.filter(limit -> limit.charRisk().isPresent())
        .map(
            limit ->
                "Job of %s m² with at most %s chance of any charred spot: that is the char risk of %s for each %s cm², counted as if each lay on a board of its own, which is never too low."
                    .formatted(
                        Figures.shortest(limit.areaSquareMetres()),
                        Figures.share(limit.charRisk().getAsDouble()),
                        Figures.share(found.asked().charRisk()),
                        Figures.three(found.patchSquareCentimetres())));
  }

  /** What the start setting comes to over a job. */
  public static String of(JobRisk risk) {
    return of(risk, "the start setting");
  }

  /**
   * What a setting comes to over a job.
   *
   * @param setting its name
   */
  static String of(JobRisk risk, String setting) {
    return "Job of %s m², %s of %s cm²: chance of any char at %s %s, at most %s; expected charred areas %s, at most %s."
        .formatted(
            Figures.plain(risk.areaSquareMetres()),
            Figures.count(risk.areas(), "area", "areas"),
            Figures.three(risk.patchSquareCentimetres()),
            setting,
            Figures.percent(risk.mean()),
            Figures.atMost(risk.upper()),
            Figures.three(risk.marksMean()),
            Figures.threeUp(risk.marksUpper()));
  }
}
