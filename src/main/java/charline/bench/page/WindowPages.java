package charline.bench.page;

import charline.bench.door.Turned;
import charline.bench.entry.Dial;
import charline.bench.live.LiveModels;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.Invariant;
import charline.exposure.Measure;
import charline.exposure.Measure.Quantity;
import charline.log.Logbook;
import charline.plan.Validity;
import charline.sheet.Paper;
import charline.sheet.SheetStamp;
import charline.sheet.WindowSheet;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Plausibility.Doubt;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.window.Asked;
import charline.window.Bench;
import charline.window.LiveForecast;
import charline.window.Recommendation;
import gg.jte.Content;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The pages of windows: every stratum, one of them with its map, and its sheet. */
public final class WindowPages {
  /** A person who asks for one window waits for it; a list does not wait for each. */
  private static final Duration LISTED = Duration.ofMillis(400);

  private static final String WORKED_OUT = "being worked out";

  private final Logbook log;
  private final LiveModels models;
  private final Clock clock;
  private final String version;
  private final Pages pages;

  WindowPages(Logbook log, LiveModels models, Clock clock, String version, Pages pages) {
    this.log = log;
    this.models = models;
    this.clock = clock;
    this.version = version;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/window", this::window);
    routes.get("/window/at", this::at);
    routes.get("/sheet", this::sheet);
  }

  /**
   * One line of the list.
   *
   * @param verdict in a word, or that it is being worked out
   * @param notValid why the window must not be used any more, if so
   */
  public record Listed(
      String link, String words, int patches, String verdict, Optional<Caution> notValid) {}

  private void window(Context ctx) {
    if (ctx.queryParam("family") == null) {
      list(ctx);
      return;
    }
    Case chosen = chosen(ctx);
    Frame frame =
        pages.frame(ctx, chosen.stratum().words(), "/window", "live.css", "window.css", "map.js");
    Asked asked = asked(ctx);
    try {
      Answer answer = answer(ctx, chosen, asked);
      Recommendation found = answer.found();
      pages.send(
          ctx,
          "window",
          frame,
          Map.of(
              "view",
              WindowView.of(
                  found,
                  asked,
                  answer.behind(),
                  answer.validity().notValid(),
                  cautions(found),
                  width(ctx))));
    } catch (WidthMissing e) {
      pages.send(
          ctx,
          "window-width",
          frame,
          Map.of("sentence", e.getMessage(), "stratum", chosen.stratum()));
    }
  }

  private void list(Context ctx) {
    List<Listed> rows =
        models.shelf().strata().entrySet().stream()
            .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
            .map(e -> listed(ctx, new Case(e.getKey(), e.getValue())))
            .toList();
    List<Caution> notValid =
        rows.stream().flatMap(row -> row.notValid().stream()).distinct().toList();
    pages.send(
        ctx,
        "windows",
        pages.frame(ctx, "Window", "/window"),
        Map.of("rows", rows, "notValid", notValid));
  }

  private Listed listed(Context ctx, Case stratum) {
    LiveModels.Known known = models.of(stratum.stratum(), false, LISTED);
    if (known.models().isEmpty() || known.renewing()) {
      return row(stratum, WORKED_OUT, Optional.empty());
    }
    LiveForecast ready = known.models().get();
    try {
      Recommendation found = models.recommend(ready, bench(ctx, stratum), Asked.USUAL);
      if (found.chosen().isEmpty()) {
        return row(stratum, found.verdict().word(), Optional.empty());
      }
      // A window is not shown without knowing whether it still holds.
      return models
          .validity(ready, rig(stratum), LISTED)
          .map(validity -> row(stratum, found.verdict().word(), validity.notValid()))
          .orElseGet(() -> row(stratum, WORKED_OUT, Optional.empty()));
    } catch (WidthMissing e) {
      return row(stratum, "needs a scan width", Optional.empty());
    }
  }

  private static Listed row(Case stratum, String verdict, Optional<Caution> notValid) {
    return new Listed(
        "/window?" + Links.of(stratum.stratum()),
        stratum.stratum().words(),
        stratum.patches().size(),
        verdict,
        notValid);
  }

  /** A stratum with its patches. */
  private record Case(Stratum stratum, List<Patch> patches) {}

  private Case chosen(Context ctx) {
    String family = text(ctx, "family");
    String wood = text(ctx, "wood");
    String light = text(ctx, "light");
    return models.shelf().strata().entrySet().stream()
        .filter(e -> e.getKey().family().equals(family) && e.getKey().wood().equals(wood))
        .filter(
            e ->
                light.isEmpty()
                    || light.equals(
                        e.getKey().emission().word() + "-" + e.getKey().wavelengthNanometres()))
        .findFirst()
        .map(e -> new Case(e.getKey(), e.getValue()))
        .orElseThrow(
            () ->
                Turned.notThere("No patch of %s on %s is in the log yet.".formatted(family, wood)));
  }

  private static String text(Context ctx, String name) {
    String text = ctx.queryParam(name);
    return text == null ? "" : text.strip();
  }

  private static Asked asked(Context ctx) {
    return new Asked(
        share(ctx, "risk", Asked.USUAL.charRisk()),
        share(ctx, "confidence", Asked.USUAL.confidence()),
        share(ctx, "clear", Asked.USUAL.clearChance()),
        "yes".equals(ctx.queryParam("tint")));
  }

  private static double share(Context ctx, String name, double usual) {
    String text = text(ctx, name);
    if (text.isEmpty()) {
      return usual;
    }
    if (!text.matches("\\d{1,2}(\\.\\d{1,2})?")) {
      throw new IllegalArgumentException(
          "A share must be a percentage such as 5, not \"%s\".".formatted(text));
    }
    return Double.parseDouble(text) / 100;
  }

  private static OptionalDouble width(Context ctx) {
    String text = text(ctx, "width");
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double width = Measure.parse(text, Quantity.LENGTH).value();
      Invariant.positive("Scan width", width, "mm");
      return OptionalDouble.of(width);
    } catch (IllegalArgumentException e) {
      throw new WidthMissing(e.getMessage());
    }
  }

  /**
   * A window, and whether it may be used.
   *
   * @param behind what it does not hold yet, in a line, while a newer one is worked out
   */
  private record Answer(Recommendation found, Validity validity, Optional<String> behind) {}

  private Answer answer(Context ctx, Case chosen, Asked asked) {
    LiveModels.Known known = models.of(chosen.stratum(), asked.acceptTint(), models.longest());
    LiveForecast ready = known.models().orElseThrow(WindowPages::notYet);
    return new Answer(
        models.recommend(ready, bench(ctx, chosen), asked),
        models.validity(ready, rig(chosen), models.longest()).orElseThrow(WindowPages::notYet),
        known.renewing()
            ? Optional.of(models.behind(ready)).filter(b -> !b.nothing()).map(BehindWords::of)
            : Optional.empty());
  }

  private static Turned notYet() {
    return new Turned(
        503, "The models of these patches are being worked out; ask again in a while.");
  }

  /** The speed of timed patches cannot be told without a scan width. */
  private static final class WidthMissing extends RuntimeException {
    private static final long serialVersionUID = 1L;

    WidthMissing(String sentence) {
      super(sentence);
    }
  }

  private Rig rig(Case chosen) {
    Rig used = Bench.mostUsedRig(chosen.patches());
    return models.shelf().rig(used.name()).orElse(used);
  }

  private Bench bench(Context ctx, Case chosen) {
    Rig rig = withWidth(rig(chosen), width(ctx));
    // To the hour, so that the same question keeps its answer.
    OffsetDateTime at = OffsetDateTime.now(clock).truncatedTo(ChronoUnit.HOURS).plusHours(1);
    try {
      return Bench.of(rig, chosen.patches(), at);
    } catch (IllegalArgumentException e) {
      throw new WidthMissing(
          "These patches were timed over an area, and rig %s has no scan width, so a hand speed cannot be told; give the width."
              .formatted(rig.name()));
    }
  }

  private static Rig withWidth(Rig rig, OptionalDouble width) {
    return width.isEmpty()
        ? rig
        : new Rig(
            rig.id(),
            rig.name(),
            rig.emission(),
            rig.ratedWatts(),
            rig.wavelengthNanometres(),
            rig.spotDefinition(),
            rig.spotMillimetres(),
            rig.repetitionKilohertz(),
            rig.pulseNanoseconds(),
            width,
            rig.lens(),
            rig.checks());
  }

  private List<Caution> cautions(Recommendation found) {
    Set<Caution> all = new LinkedHashSet<>();
    Bench bench = found.bench();
    bench
        .otherSpotOfLate(found.patches())
        .map(
            last ->
                new Caution(
                    "Other spot of late",
                    "The last patch on rig %s had a spot of %s mm, and this is for %s mm, as most patches had. If the lens or the stand-off is another one now, this is not for it."
                        .formatted(
                            bench.rig().name(),
                            Invariant.plain(last.diameterMillimetres()),
                            Invariant.plain(bench.spot().diameterMillimetres())),
                    Validity.SOURCE))
        .ifPresent(all::add);
    for (Patch patch : found.patches()) {
      Emission emission = patch.rig().emission();
      all.addAll(log.cautions(patch.finish(), patch.board(), emission));
    }
    return List.copyOf(all);
  }

  /** What a place on the map does. */
  private void at(Context ctx) {
    Case chosen = chosen(ctx);
    Asked asked = asked(ctx);
    int passes = (int) number(ctx, "passes", 1, 999);
    Bench bench = bench(ctx, chosen);
    Exposure exposure;
    List<Doubt> doubts;
    try {
      double power = Measure.parse(text(ctx, "power"), Quantity.SHARE).value();
      doubts = Dial.bareShare(bench.rig().emission(), text(ctx, "power"));
      Invariant.positive("Power", power, "%");
      Invariant.within("Power", power, 0, 100, "%");
      double speed = Measure.parse(text(ctx, "speed"), Quantity.SPEED).value();
      Invariant.positive("Speed", speed, "mm/s");
      exposure = bench.exposure(power, speed);
    } catch (IllegalArgumentException e) {
      Pages.json(ctx, Map.of("note", e.getMessage())); // in place of figures of another setting
      return;
    }
    Map<String, Object> words =
        LiveWords.of(
            chosen.stratum(),
            models.of(chosen.stratum(), asked.acceptTint(), models.longest()),
            exposure,
            passes,
            asked);
    LiveWords.doubt(words, doubts);
    Pages.json(ctx, words);
  }

  private static double number(Context ctx, String name, double low, double high) {
    String text = text(ctx, name);
    if (!text.matches("\\d{1,7}(\\.\\d{1,6})?")
        || Double.parseDouble(text) < low
        || Double.parseDouble(text) > high) {
      throw new IllegalArgumentException(
          "%s must be a number above 0, not \"%s\".".formatted(name, text));
    }
    return Double.parseDouble(text);
  }

  private void sheet(Context ctx) {
    Case chosen = chosen(ctx);
    Answer answer = answer(ctx, chosen, asked(ctx));
    Recommendation found = answer.found();
    List<Caution> cautions = new ArrayList<>(answer.validity().notValid().stream().toList());
    answer
        .behind()
        .map(line -> new Caution("Not the newest", line, "the log"))
        .ifPresent(cautions::add);
    cautions.addAll(cautions(found));
    SheetStamp stamp =
        new SheetStamp(
            String.valueOf(log.file().getFileName()),
            version,
            OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS),
            Optional.ofNullable(ctx.queryParam("by")).filter(b -> !b.isBlank()));
    Optional<String> script =
        Optional.ofNullable(ctx.queryParam("print"))
            .filter("yes"::equals)
            .map(yes -> Assets.address("print.js"));
    Content head =
        Pages.content("sheet-head", Map.of("icon", Assets.address("icon.svg"), "script", script));
    Pages.send(ctx, new WindowSheet(found, cautions, stamp).html(Paper.ANY, head));
  }
}
