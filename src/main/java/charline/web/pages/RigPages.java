package charline.web.pages;

import charline.drift.Drift;
import charline.log.Change;
import charline.log.Logbook;
import charline.paper.DriftChart;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.security.HttpRefusal;
import charline.wording.CircumstancesText;
import charline.wording.DriftText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The page of one rig: whether it has drifted, its power checks, its upkeep, its history. */
public final class RigPages {
  private final Logbook log;
  private final LiveAnswers live;
  private final PageOptions options;
  private final Pages pages;

  RigPages(Logbook log, LiveAnswers live, PageOptions options, Pages pages) {
    this.log = log;
    this.live = live;
    this.options = options;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/rig", this::show);
  }

  /**
   * The page's content.
   *
   * @param what what it is, in a line
   * @param drift whether it has drifted, and what to do; empty while that is computed
   * @param drifted whether it has
   * @param renewing whether a newer answer is computed
   */
  public record RigView(
      Rig rig,
      String what,
      Optional<String> drift,
      boolean drifted,
      boolean renewing,
      List<DriftChart> charts,
      List<Entry> checks,
      List<Entry> upkeep,
      List<Change> history) {}

  /** A power check or upkeep, with where it is put right. */
  public record Entry(String day, String words, String link) {}

  private void show(Context ctx) {
    Rig rig;
    try {
      rig = log.rig(Asking.text(ctx, "of"));
    } catch (Refusal e) {
      throw HttpRefusal.notThere(e.getMessage());
    }
    LastKnown.Known<Drift> known = live.drifts().of(rig.name(), options.patience());
    List<Entry> checks = new ArrayList<>();
    rig.checks().forEach(check -> checks.add(0, entry(rig, check, "")));
    log.rigEntries().voidChecks(rig).forEach(v -> checks.add(entry(rig, v.check(), "Void: ")));
    List<Entry> upkeep = new ArrayList<>();
    rig.upkeep().forEach(each -> upkeep.add(0, entry(rig, each, "")));
    log.rigEntries().voidUpkeep(rig).forEach(v -> upkeep.add(entry(rig, v.upkeep(), "Void: ")));
    pages.send(
        ctx,
        "rig",
        pages.frame(ctx, "Rig " + rig.name(), "", "work.css", "renew.js"),
        Map.of(
            "view",
            new RigView(
                rig,
                what(rig),
                known.value().map(RigPages::words),
                known.value().flatMap(Drift::since).isPresent(),
                known.renewing(),
                known.value().map(DriftChart::of).orElse(List.of()),
                checks,
                upkeep,
                log.history(rig))));
  }

  private static String words(Drift drift) {
    return drift
        .shift()
        .map(DriftText::advice)
        .orElse(
            drift.watches().isEmpty()
                ? "It has no control patches and no power checks yet, so its drift is unknown; burn"
                    + " the same setting again as every eighth patch."
                : "It shows no drift.");
  }

  private static String what(Rig rig) {
    List<String> parts = new ArrayList<>();
    parts.add(
        "%s, %s W rated, %s nm"
            .formatted(
                rig.emission().word(),
                Figures.plain(rig.ratedWatts()),
                Figures.plain(rig.wavelengthNanometres())));
    Figures.plain(rig.spotMillimetres(), "mm")
        .ifPresent(spot -> parts.add("spot %s (%s)".formatted(spot, rig.spotDefinition().word())));
    Figures.plain(rig.repetitionKilohertz(), "kHz").ifPresent(parts::add);
    Figures.plain(rig.pulseNanoseconds(), "ns").ifPresent(parts::add);
    Figures.plain(rig.scanWidthMillimetres(), "mm").ifPresent(w -> parts.add("scan width " + w));
    rig.lens().ifPresent(parts::add);
    parts.addAll(CircumstancesText.facts(rig).values());
    return String.join(", ", parts);
  }

  private static Entry entry(Rig rig, PowerCheck check, String before) {
    return new Entry(
        check.at().toLocalDate().toString(),
        "%s%s W metered at %s %%%s"
            .formatted(
                before,
                Figures.plain(check.meteredWatts()),
                Figures.plain(check.percent()),
                Figures.plain(check.repetitionKilohertz(), "kHz")
                    .map(rate -> " and " + rate)
                    .orElse("")),
        "/put-right/check?rig=" + Links.escaped(rig.name()) + "&of=" + check.id());
  }

  private static Entry entry(Rig rig, Upkeep upkeep, String before) {
    return new Entry(
        upkeep.at().toLocalDate().toString(),
        before
            + upkeep.work()
            + Figures.plain(upkeep.hours(), "h").map(h -> " at " + h).orElse("")
            + upkeep.note().map(note -> ": " + note).orElse(""),
        "/put-right/upkeep?rig=" + Links.escaped(rig.name()) + "&of=" + upkeep.id());
  }
}
