package charline.wording;

import static charline.wording.Table.line;

import charline.drift.Drift;
import charline.quantity.Figures;
import charline.trial.Rig;
import charline.trial.Upkeep;

/** Drift of a rig, as text and as JSON. */
public final class DriftReport {
  private static final int BAR = 16;

  private DriftReport() {}

  public static Json json(Drift drift) {
    return new Json()
        .put("rig", drift.rig().name())
        .put("drifted_since", drift.since().map(String::valueOf))
        .put("advice", drift.shift().map(DriftText::advice))
        .put("upkeep", drift.rig().upkeep().stream().map(UpkeepText::json).toList())
        .put("watches", drift.watches().stream().map(DriftReport::json).toList());
  }

  private static Json json(Drift.Watch watch) {
    return new Json()
        .put("what", DriftText.gauge(watch.gauge()))
        .put("limit", watch.limit())
        .put("drifted_since", watch.since().map(String::valueOf))
        .put("weaker", watch.since().map(s -> watch.weaker()))
        .put(
            "points",
            watch.points().stream()
                .map(
                    p ->
                        new Json()
                            .put("at", p.at().toString())
                            .put("name", DriftText.name(p))
                            .put("score", p.score())
                            .put("run", p.run() + 1)
                            .put("sum_up", p.up())
                            .put("sum_down", p.down()))
                .toList());
  }

  public static String text(Drift drift) {
    StringBuilder text = new StringBuilder();
    line(
        text,
        drift
            .shift()
            .map(DriftText::advice)
            .orElse(
                drift.watches().isEmpty()
                    ? "Rig %s has no control patches and no power checks yet, so its drift is unknown; burn the same setting again as every eighth patch."
                        .formatted(drift.rig().name())
                    : "Rig %s shows no drift.".formatted(drift.rig().name())));
    for (Drift.Watch watch : drift.watches()) {
      text.append('\n');
      line(
          text,
          "%s; drift above %s%s"
              .formatted(
                  DriftText.gauge(watch.gauge()),
                  Figures.three(watch.limit()),
                  watch
                      .since()
                      .map(
                          s ->
                              ", reached: %s since %s"
                                  .formatted(
                                      watch.weaker() ? "weaker" : "stronger", s.toLocalDate()))
                      .orElse("")));
      Table table = new Table("day", "value", ">off by sd", ">sum up", ">sum down", "larger sum");
      int run = 0;
      for (Drift.Point p : watch.points()) {
        marks(table, drift.rig(), run, p.run());
        run = p.run();
        double sum = Math.max(p.up(), p.down());
        table.row(
            p.at().toLocalDate().toString(),
            DriftText.name(p),
            Figures.two(p.score()),
            Figures.two(p.up()),
            Figures.two(p.down()),
            bar(sum, watch.limit()));
      }
      marks(table, drift.rig(), run, drift.rig().upkeep().size());
      text.append(table.text());
    }
    return text.toString();
  }

  /** The upkeep between one run and another, a line each. */
  private static void marks(Table table, Rig rig, int from, int to) {
    for (Upkeep upkeep : rig.upkeep().subList(from, to)) {
      table.row(upkeep.at().toLocalDate().toString(), upkeep.work(), "", "", "", "new run");
    }
  }

  /** The sum as a bar: the limit is the last sign of a full one, and what passes it is an arrow. */
  private static String bar(double sum, double limit) {
    int signs = (int) Math.min(BAR, Math.round(BAR * sum / limit));
    return "=".repeat(signs) + (sum > limit ? ">" : "");
  }
}
