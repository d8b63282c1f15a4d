package charline.web.pages;

import charline.answer.Light;
import charline.answer.PairsAnswer;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.exposure.Figure;
import charline.log.Logbook;
import charline.model.way.Coating;
import charline.model.way.Warmth;
import charline.model.way.Way;
import charline.paper.ComparePage;
import charline.plan.PairList;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Stratum;
import charline.trial.Tone;
import charline.web.live.LastKnown;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.wording.CompareText;
import charline.wording.PairEntries;
import charline.wording.PairsText;
import charline.wording.SettingsText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The pages that hold two ways of working against each other. */
public record ComparePages(
    Logbook log,
    LiveModels models,
    LiveAnswers live,
    AnswerPages before,
    PageOptions options,
    Pages pages) {
  private static final int MOST_PASSES = 4;
  private static final String WETTED = "wetted";

  void add(RoutesConfig routes) {
    routes.get("/compare", ctx -> show(ctx, ""));
    routes.post("/compare/burn", this::burn);
  }

  /**
   * A pair of ways to tap.
   *
   * @param link its page
   * @param words such as "circle against line"
   */
  public record Choice(String link, String words) {}

  /**
   * What the page shows of a comparison.
   *
   * @param words the comparison in words
   * @param picture both windows on one map, as HTML with its style
   * @param pairs patches that would settle it, if any
   * @param open plans of the coat on the wood that are not burned yet
   * @param query part of the address that asks the same again
   * @param renewing whether newer patches are being added
   */
  public record View(
      CompareText words,
      String picture,
      Optional<PairsText> pairs,
      List<BurnNextView.Plan> open,
      String query,
      boolean renewing) {
    /** Names a pair, so that no other is taken for it once the list has changed. */
    public String said(PairList.Pair pair) {
      return name(pair);
    }
  }

  private static String name(PairList.Pair pair) {
    return pair.burns().stream()
        .map(burn -> SettingsText.settings(burn.settings()))
        .collect(Collectors.joining(" and ", "", " on " + pair.place().name()));
  }

  private TrialQuestion about(Context ctx) {
    return TrialQuestion.about(
        log.reference().family(Asking.text(ctx, "family")),
        log.reference().wood(Asking.text(ctx, "wood")));
  }

  private LiveAnswers.TwoWays asked(Context ctx, TrialQuestion about) {
    String one = Asking.text(ctx, "a");
    String other = Asking.text(ctx, "b");
    return new LiveAnswers.TwoWays(
        question(about, one), question(about, other), passes(one), passes(other));
  }

  private void show(Context ctx, String trouble) {
    TrialQuestion about = about(ctx);
    String family = about.named().family();
    String wood = about.named().wood();
    String title = "Compare: %s on %s".formatted(family, wood);
    Frame frame = pages.frame(ctx, title, "/window", "work.css", "renew.js");
    if (Asking.text(ctx, "a").isEmpty() || Asking.text(ctx, "b").isEmpty()) {
      List<Choice> choices = choices(family, wood);
      pages.send(
          ctx,
          "compare-choose",
          frame,
          Map.of(
              "title", title, "stratum", "%s on %s".formatted(family, wood), "choices", choices));
      return;
    }
    Precautions precautions = live.now().precautions(about);
    if (precautions.barred()) {
      before.noBeam(ctx, title, precautions, HttpStatus.OK);
      return;
    }
    LastKnown.Known<LiveAnswers.Compared> known =
        live.comparisons().of(asked(ctx, about), options.patience());
    if (known.value().isEmpty()) {
      before.computing(ctx, frame, title, about);
      return;
    }
    CompareText words = new CompareText(known.value().get().answer());
    pages.send(
        ctx,
        "compare",
        frame,
        Map.of(
            "view",
            new View(
                words,
                ComparePage.pictureHtml(words),
                known.value().get().pairs().map(PairsText::new),
                taps().open(words.answer().first().subject().trials().stratum()).stream()
                    .map(BurnNextView.Plan::of)
                    .toList(),
                "family=%s&wood=%s&a=%s&b=%s"
                    .formatted(
                        Links.escaped(family),
                        Links.escaped(wood),
                        Links.escaped(Asking.text(ctx, "a")),
                        Links.escaped(Asking.text(ctx, "b"))),
                known.renewing()),
            "trouble",
            trouble));
  }

  private PlanTaps taps() {
    return new PlanTaps(log, options);
  }

  /** Plans both patches of a pair, then goes where the first is recorded. */
  private void burn(Context ctx) {
    try {
      TrialQuestion about = about(ctx);
      if (live.now().precautions(about).barred()) {
        throw Refusal.nothingFound("The beam stays off this coat, so no patch is planned.");
      }
      PairsAnswer answer =
          PlanTaps.newest(live.comparisons().of(asked(ctx, about), taps().patience()))
              .pairs()
              .orElseThrow(() -> PlanTaps.gone(PlanTaps.said(ctx)));
      PairList.Pair chosen =
          answer.list().pairs().stream()
              .filter(pair -> name(pair).equals(PlanTaps.said(ctx)))
              .findFirst()
              .orElseThrow(() -> PlanTaps.gone(PlanTaps.said(ctx)));
      PairEntries entries = new PairEntries(answer, log::newId, taps().moment(), taps().by(ctx));
      PlanTaps.record(ctx, taps().reserved(entries.of(chosen)).get(0));
    } catch (Refusal e) {
      ctx.status(409);
      show(ctx, e.getMessage());
    }
  }

  /** A way as the address has it: {@code figure:circle}, {@code passes:2}. */
  private static String[] sides(String way) {
    String[] sides = way.split(":", 2);
    if (sides.length < 2 || sides[1].isBlank()) {
      throw Refusal.usage("Choose two ways of working from the list, not \"%s\".".formatted(way));
    }
    return sides;
  }

  private TrialQuestion question(TrialQuestion about, String way) {
    String[] sides = sides(way);
    return switch (sides[0]) {
      case "rig" -> about.onRig(sides[1]);
      case "figure" -> about.with(about.way().with(Optional.of(Figure.ofWord(sides[1]))));
      case "tone" ->
          about.with(new Coating(Optional.of(Tone.ofWord(sides[1])), OptionalDouble.empty()));
      case "place" -> about.with(about.way().with(Place.ofWord(sides[1])));
      case "rest" -> about.with(about.way().with(warmth(sides[1])));
      case "finish" -> about.with(about.way().wetted(sides[1].equals(WETTED)));
      case "light" ->
          models.shelf().strata().keySet().stream()
              .map(Light::of)
              .filter(light -> light.code().equals(sides[1]))
              .findAny()
              .map(about::with)
              .orElseThrow(() -> Refusal.usage("Choose two ways of working from the list."));
      case "passes" -> about;
      default -> throw Refusal.usage("Choose two ways of working from the list.");
    };
  }

  private static Warmth warmth(String word) {
    return Arrays.stream(Warmth.values())
        .filter(warmth -> warmth.word().equals(word))
        .findAny()
        .orElseThrow(() -> Refusal.usage("Choose two ways of working from the list."));
  }

  private static OptionalInt passes(String way) {
    String[] sides = sides(way);
    if (!sides[0].equals("passes")) {
      return OptionalInt.empty();
    }
    if (!sides[1].matches("[1-9]\\d?")) {
      throw Refusal.usage("Passes must be a whole number, 1 or more.");
    }
    return OptionalInt.of(Integer.parseInt(sides[1]));
  }

  /** All pairs of ways that the patches of a coat on a wood were burned in. */
  private List<Choice> choices(String family, String wood) {
    List<Patch> all =
        models.shelf().trials().patches().stream()
            .filter(p -> p.finish().family().equals(family) && p.board().wood().equals(wood))
            .toList();
    Set<Stratum> tried = all.stream().map(Stratum::of).collect(Collectors.toSet());
    if (tried.isEmpty()) {
      throw Refusal.nothingFound("The log has no patches of %s over %s.".formatted(family, wood));
    }
    String base =
        "/compare?family=%s&wood=%s".formatted(Links.escaped(family), Links.escaped(wood));
    List<Choice> choices = new ArrayList<>();
    pairs(
        choices,
        base,
        "figure",
        all.stream().flatMap(p -> p.manner().figure().stream()).map(Figure::word));
    pairs(choices, base, "rig", all.stream().map(p -> p.rig().name()));
    pairs(choices, base, "light", tried.stream().map(Light::of).map(Light::code));
    pairs(
        choices,
        base,
        "tone",
        all.stream().flatMap(p -> p.finish().tone().stream()).map(Tone::word));
    pairs(choices, base, "place", all.stream().map(p -> p.manner().place().word()));
    pairs(
        choices,
        base,
        "rest",
        all.stream().flatMap(p -> Way.of(p).warmth().stream()).map(Warmth::word));
    pairs(
        choices,
        base,
        "finish",
        all.stream().flatMap(p -> Way.of(p).wetted().stream()).map(wet -> wet ? WETTED : "dry"));
    if (tried.size() == 1) {
      int most = all.stream().mapToInt(p -> p.lastReading().passes()).max().orElse(1);
      for (int passes = 1; passes < Math.min(MOST_PASSES, most); passes++) {
        choices.add(
            choice(
                base,
                "passes:" + passes,
                "passes:" + (passes + 1),
                "work in %d against %d passes".formatted(passes, passes + 1)));
      }
    }
    return choices;
  }

  private static void pairs(
      List<Choice> choices, String base, String trait, Stream<String> values) {
    List<String> distinct = values.distinct().sorted().toList();
    for (int i = 0; i < distinct.size(); i++) {
      for (int j = i + 1; j < distinct.size(); j++) {
        choices.add(
            choice(
                base,
                trait + ":" + distinct.get(i),
                trait + ":" + distinct.get(j),
                "%s: %s against %s"
                    .formatted(
                        trait.equals("rest") ? "wood at the next pass" : trait,
                        distinct.get(i),
                        distinct.get(j))));
      }
    }
  }

  private static Choice choice(String base, String one, String other, String words) {
    return new Choice(
        "%s&a=%s&b=%s".formatted(base, Links.escaped(one), Links.escaped(other)), words);
  }
}
