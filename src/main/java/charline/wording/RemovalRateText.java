package charline.wording;

import static charline.quantity.Figures.three;

import charline.answer.RemovalRate;
import charline.answer.TrialCase;
import charline.model.Estimate;
import charline.quantity.Figures;
import charline.window.Strokes;
import java.math.RoundingMode;
import java.util.List;

/** Passes to clear and what they make of the work, at some of the settings that were tried. */
public final class RemovalRateText {
  private RemovalRateText() {}

  /** One setting in words. */
  public record Row(
      String power,
      String speed,
      String dose,
      String median,
      String nearlyAll,
      String perPass,
      String areaRate) {}

  /** The settings in words, in their order. */
  public static List<Row> rows(List<RemovalRate> rates) {
    return rates.stream()
        .map(
            rate ->
                new Row(
                    SettingsText.power(rate.settings().power()),
                    SettingsText.speed(rate.settings().form()),
                    three(rate.exposure().doseJoulesPerCm2()),
                    passes(rate.median()),
                    passes(rate.nearlyAll()),
                    perPass(rate),
                    three(rate.netSquareCentimetresPerMinute())))
        .toList();
  }

  /** What the area rate counts. */
  public static String counted(Strokes strokes) {
    return "The net rate counts the whole passes that clear 90 % of patches%s. It ignores char; a window does not."
        .replace(
            "%s",
            strokes.equals(Strokes.SINGLE)
                ? ""
                : ", in strokes that overlap by " + Figures.share(strokes.overlap()));
  }

  /** As a table, for any board or a piece. */
  public static String text(List<RemovalRate> rates, TrialCase subject) {
    Table table =
        new Table(
            ">power", ">speed", ">J/cm2", ">passes, median", ">for 90 %", ">um/pass", ">cm2/min");
    rows(rates)
        .forEach(
            row ->
                table.row(
                    row.power(),
                    row.speed(),
                    row.dose(),
                    row.median(),
                    row.nearlyAll(),
                    row.perPass(),
                    row.areaRate()));
    return "Passes to clear on %s, with 90 %% intervals\n"
            .formatted(PieceText.board(subject.piece()))
        + table.text()
        + Table.paragraph(
            "um/pass is the coat's thickness over the median passes; in brackets, as gauged there. "
                + counted(subject.question().strokes()))
        + "\n";
  }

  /**
   * From the coat, and gauged in brackets; where one pass clears, it may lift more than there is.
   */
  private static String perPass(RemovalRate rate) {
    String byCoat =
        rate.perPass()
            .map(depth -> three(depth.micrometres()) + (depth.orMore() ? " or more" : ""))
            .orElse("-");
    return rate.gaugedMicrometres().isEmpty()
        ? byCoat
        : "%s (%s)".formatted(byCoat, three(rate.gaugedMicrometres().getAsDouble()));
  }

  private static String passes(Estimate passes) {
    return "%s (%s-%s)"
        .formatted(
            shown(passes.median(), RoundingMode.HALF_UP),
            shown(passes.low(), RoundingMode.FLOOR),
            shown(passes.high(), RoundingMode.CEILING));
  }

  private static String shown(double passes, RoundingMode mode) {
    return passes > 99 ? ">99" : Figures.tenths(passes, mode);
  }

  public static List<Json> json(List<RemovalRate> rates) {
    return rates.stream()
        .map(
            rate ->
                new Json()
                    .put("settings", SettingsText.settings(rate.settings()))
                    .put("dose_j_cm2", rate.exposure().doseJoulesPerCm2())
                    .put("intensity", rate.exposure().intensity())
                    .put("passes_median", WindowJson.estimate(rate.median()))
                    .put("passes_for_90_pct", WindowJson.estimate(rate.nearlyAll()))
                    .put("um_per_pass", rate.perPass().map(RemovalRate.PerPass::micrometres))
                    .put("um_per_pass_or_more", rate.perPass().map(RemovalRate.PerPass::orMore))
                    .put("um_per_pass_gauged", rate.gaugedMicrometres())
                    .put("net_area_rate_cm2_min", rate.netSquareCentimetresPerMinute()))
        .toList();
  }
}
