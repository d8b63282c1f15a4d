package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Work;
import charline.cli.render.Json;
import charline.cli.render.JsonReply;
import charline.cli.render.Table;
import charline.drift.Drift;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.model.Fitter;
import charline.model.Trials;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.wording.DriftText;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code rig drift}. */
@Command(
    name = "drift",
    header = "See whether a rig still does what it did.",
    description =
        "Adds up how far control patches (the setting burned most on coats of one tone and"
            + " thickness, three times or more) and power checks (metered W) lie off, in standard"
            + " deviations, and says since when the rig has drifted (cumulative sums, Page 1954)."
            + " Exit code 1 means: it has.",
    footer = {"", "Example:", "  charline rig drift Heron"})
public final class RigDrift extends Work {
  private static final int BAR = 16;

  @Parameters(paramLabel = "NAME", description = "The rig.")
  private String name;

  @Mixin private JsonReply reply;

  public RigDrift(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Rig rig = log.rig(name);
      Drift drift = Drift.of(rig, strata(log, rig), Fitter.withDefaults());
      reply.print(desk.out(), () -> json(drift), () -> text(drift));
      return drift.since().isPresent() ? NO : DONE;
    }
  }

  private static List<Trials> strata(Logbook log, Rig rig) {
    Map<Stratum, List<Patch>> strata =
        log.patches(Filter.ALL).stream()
            .map(PatchEntry::patch)
            .collect(Collectors.groupingBy(Stratum::of, LinkedHashMap::new, Collectors.toList()));
    return strata.entrySet().stream()
        .filter(e -> e.getValue().stream().anyMatch(p -> p.rig().id().equals(rig.id())))
        .map(e -> new Trials(e.getKey(), e.getValue(), false))
        .toList();
  }

  private static Json json(Drift drift) {
    return new Json()
        .put("rig", drift.rig().name())
        .put("drifted_since", drift.since().map(String::valueOf))
        .put("advice", drift.shift().map(DriftText::advice))
        .put("watches", drift.watches().stream().map(RigDrift::json).toList());
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
                            .put("sum_up", p.up())
                            .put("sum_down", p.down()))
                .toList());
  }

  private static String text(Drift drift) {
    StringBuilder text = new StringBuilder();
    line(
        text,
        drift
            .shift()
            .map(DriftText::advice)
            .orElse(
                drift.watches().isEmpty()
                    ? "Rig %s has neither control patches nor power checks yet, so nothing can be said of drift; burn one setting again every eighth patch."
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
      for (Drift.Point p : watch.points()) {
        double sum = Math.max(p.up(), p.down());
        table.row(
            p.at().toLocalDate().toString(),
            DriftText.name(p),
            Figures.two(p.score()),
            Figures.two(p.up()),
            Figures.two(p.down()),
            bar(sum, watch.limit()));
      }
      text.append(table.text());
    }
    return text.toString();
  }

  /** The sum as a bar: the limit is the last sign of a full one, and what passes it is an arrow. */
  private static String bar(double sum, double limit) {
    int signs = (int) Math.min(BAR, Math.round(BAR * sum / limit));
    return "=".repeat(signs) + (sum > limit ? ">" : "");
  }

  private static void line(StringBuilder text, String sentence) {
    text.append(Table.paragraph(sentence)).append('\n');
  }
}
