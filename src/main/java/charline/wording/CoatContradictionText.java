package charline.wording;

import static charline.quantity.Figures.three;

import charline.model.CoatContradiction;
import charline.quantity.Figures;
import charline.trial.DepthClash;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.Collectors;

/** What the trials say of the coat that cannot all be true. */
public final class CoatContradictionText {
  private static final int NAMED = 5;

  private CoatContradictionText() {}

  /** One or two sentences, with what to do. */
  public static String of(CoatContradiction contradiction) {
    if (contradiction instanceof CoatContradiction.Pace pace) {
      return "The gauge says %s um per pass (%s), but the coat's thickness over the passes that clear it makes %s: one of them is wrong. Measure the coat again, and check for finish left on patches called clean."
          .formatted(
              three(pace.byGaugeMicrometres()),
              Figures.count(pace.patches(), "patch", "patches"),
              three(pace.byCoatMicrometres()));
    }
    CoatContradiction.Depths depths = (CoatContradiction.Depths) contradiction;
    return (depths.kind() == DepthClash.Kind.GONE_TOO_SOON
            ? "The finish was gone from %s with %s um removed, but the coat is %s um: the thickness, the depth or the outcome is wrong. Measure the coat again, and look for finish left."
            : "Finish was left on %s with %s um removed, but the coat is %s um: the thickness, the depth or the outcome is wrong. Measure the coat again, and look whether wood was removed.")
        .formatted(
            codes(depths.patches()),
            range(
                depths.patches().stream()
                    .mapToDouble(DepthClash::depthMicrometres)
                    .summaryStatistics()),
            range(
                depths.patches().stream()
                    .mapToDouble(DepthClash::coatMicrometres)
                    .summaryStatistics()));
  }

  /** A paragraph each, on lines of their own; nothing where there is none. */
  public static String paragraphs(List<CoatContradiction> all) {
    StringBuilder text = new StringBuilder();
    all.forEach(each -> text.append(Table.paragraph("MIND: " + of(each))).append('\n'));
    return text.toString();
  }

  private static String codes(List<DepthClash> patches) {
    String named =
        patches.stream().limit(NAMED).map(DepthClash::code).collect(Collectors.joining(", "));
    int more = patches.size() - NAMED;
    return more <= 0 ? named : named + " and %d more".formatted(more);
  }

  private static String range(DoubleSummaryStatistics values) {
    String low = three(values.getMin());
    String high = three(values.getMax());
    return low.equals(high) ? low : low + " to " + high;
  }

  /** The same with a kind and its numbers. */
  public static Json json(CoatContradiction contradiction) {
    Json json = new Json();
    if (contradiction instanceof CoatContradiction.Pace pace) {
      json.put("kind", "um_per_pass")
          .put("patches", pace.patches())
          .put("um_per_pass_by_gauge", pace.byGaugeMicrometres())
          .put("um_per_pass_by_coat", pace.byCoatMicrometres());
    } else {
      CoatContradiction.Depths depths = (CoatContradiction.Depths) contradiction;
      json.put(
              "kind",
              depths.kind() == DepthClash.Kind.GONE_TOO_SOON ? "gone_too_soon" : "left_too_long")
          .put(
              "patches",
              depths.patches().stream()
                  .map(
                      c ->
                          new Json()
                              .put("patch", c.code())
                              .put("passes", c.passes())
                              .put("depth_um", c.depthMicrometres())
                              .put("measured", c.measured())
                              .put("coat_um", c.coatMicrometres()))
                  .toList());
    }
    return json.put("text", of(contradiction));
  }
}
