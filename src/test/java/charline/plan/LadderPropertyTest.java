package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.LiveForecast;
import charline.window.Requirements;
import charline.window.Strokes;
import charline.wording.PlanText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The ladder rule over thousands of logs whose outcomes follow no law at all. What is believed of
 * the events is the prior, which the rule must not depend on.
 */
class LadderPropertyTest {
  private static final int LOGS = 2000;
  private static ModelFit charring;
  private static ModelFit clearing;
  private static double lnFirst;

  @BeforeAll
  static void fit_the_prior() {
    double intensity = InventedShop.BENCH.exposure(40, 20).intensity();
    charring = thinned(Fitter.withDefaults().beforeTrials(Event.CHAR, Emission.PULSED, intensity));
    clearing =
        thinned(Fitter.withDefaults().beforeTrials(Event.CLEARING, Emission.PULSED, intensity));
    lnFirst = outlook().lnSafeDose(Math.log(intensity));
  }

  /** Few draws, many logs: the rule must hold whatever is believed. */
  private static ModelFit thinned(ModelFit f) {
    return new ModelFit(
        f.event(),
        f.tau(),
        f.phi(),
        f.psi(),
        f.sigma(),
        f.omega(),
        f.evenDoseJoulesPerCm2(),
        f.referenceIntensity(),
        f.paretoK(),
        f.draws(),
        f.effectiveDraws(),
        f.method(),
        f.ways(),
        f.wayEffects(),
        f.borrowed(),
        f.posterior().thinned(200));
  }

  private static Outlook outlook() {
    return new Outlook(
        Requirements.USUAL, charring, clearing, Optional.empty(), Strokes.SINGLE, 40);
  }

  @Test
  void no_list_climbs_more_than_one_step_over_what_was_burned_without_char() {
    Random random = new Random(5);
    for (int log = 0; log < LOGS; log++) {
      List<Patch> patches = log(random);
      List<Suggestion> list = list(patches, random);

      List<Burned> safe = uncharred(patches);
      burnedAsSaid(list, safe, random);
      for (Suggestion s : list) {
        List<Burned> before = new ArrayList<>(safe);
        if (s.onlyAfter().isPresent()) {
          int number = s.onlyAfter().getAsInt();
          assertThat(number).isBetween(1, s.number() - 1);
          before.add(Burned.at(list.get(number - 1).setting()));
        }
        assertThat(allowed(Burned.at(s.setting()), before))
            .as("log %d, patch %d", log, s.number())
            .isTrue();
      }
    }
  }

  /** Whoever burns a list and skips what hangs on a charred patch keeps the rule, come what may. */
  private static void burnedAsSaid(List<Suggestion> list, List<Burned> uncharred, Random random) {
    List<Burned> before = new ArrayList<>(uncharred);
    boolean[] safe = new boolean[list.size() + 1];
    for (Suggestion s : list) {
      if (s.onlyAfter().isPresent() && !safe[s.onlyAfter().getAsInt()]) {
        continue;
      }
      Burned burned = Burned.at(s.setting());
      assertThat(allowed(burned, before)).isTrue();
      if (random.nextDouble() < 0.7) {
        safe[s.number()] = true;
        before.add(burned);
      }
    }
  }

  @Test
  void the_first_patch_of_all_lies_on_the_lowest_rung() {
    for (int seed = 0; seed < 20; seed++) {
      List<Suggestion> list = list(List.of(), new Random(seed));

      assertThat(list.get(0).setting().lnDose()).isLessThanOrEqualTo(lnFirst + 1e-9);
      assertThat(list.get(0).onlyAfter()).isEqualTo(OptionalInt.empty());
      assertThat(PlanText.motive(list.get(0).motive())).isEqualTo("lowest rung");
    }
  }

  @Test
  void a_list_spreads_over_as_many_boards_as_are_asked_for() {
    List<String> places =
        list(List.of(), new Random(1)).stream().map(s -> s.place().name()).toList();
    assertThat(places.subList(0, Math.min(places.size(), Planner.BOARDS))).doesNotHaveDuplicates();
    assertThat(places).hasSizeGreaterThan(3);
  }

  /**
   * The planner may not be the judge of its own list: the risk is the one that the bench page shows
   * of the setting before it is fired.
   */
  @Test
  void on_the_piece_no_patch_passes_the_risk_even_at_its_upper_bound() {
    Random random = new Random(7);
    int suggested = 0;
    for (int log = 0; log < 12; log++) {
      List<Patch> patches = log(random, 6 + random.nextInt(12));
      Trials trials = new Trials(Stratum.of(patches.get(0)), patches, false);
      LiveForecast live = LiveForecast.fitted(Fitter.withDefaults(), trials);
      NextPatches next =
          Planner.withDefaults()
              .next(trials, InventedShop.BENCH, Requirements.USUAL, Site.PIECE, List.of(), 3);
      for (Suggestion s : next.suggestions()) {
        suggested++;
        LiveForecast.Expected shown =
            live.at(
                InventedShop.HERON,
                s.settings(),
                InventedShop.BENCH.exposure(
                    s.setting().powerPercent(), s.setting().speedMillimetresPerSecond()),
                s.passes(),
                Strokes.SINGLE,
                Requirements.USUAL.confidence());
        assertThat(shown.charRiskUpper())
            .as("log %d, patch %d", log, s.number())
            .isLessThanOrEqualTo(
                Requirements.USUAL.charRisk() + 1e-9); // the dose goes through a logarithm
        assertThat(s.charRiskUpper()).isCloseTo(shown.charRiskUpper(), within(1e-9));
        assertThat(s.clearChanceMean()).isCloseTo(shown.clearChanceMean(), within(1e-9));
      }
    }
    assertThat(suggested).isPositive();
  }

  private static List<Suggestion> list(List<Patch> patches, Random random) {
    Outlook outlook = outlook();
    Ladder ladder =
        patches.isEmpty() ? Ladder.from(lnFirst) : Ladder.of(patches, patches, () -> lnFirst);
    int known = ladder.size();
    PatchSelection drafting =
        new PatchSelection(
            InventedShop.BENCH,
            Requirements.USUAL,
            Site.OFFCUT,
            outlook,
            ladder,
            patches,
            Planner.PASSES);
    List<Board> boards = IntStream.range(0, 3).mapToObj(InventedShop::board).toList();
    BoardRota rota = new BoardRota(patches, boards, Planner.BOARDS, random);
    List<Suggestion> drafts =
        new PatchList(
                InventedShop.BENCH,
                Requirements.USUAL,
                Site.OFFCUT,
                outlook,
                drafting,
                patches,
                rota)
            .draft(1 + random.nextInt(6));
    return PatchList.ordered(drafts, drafting, known, random);
  }

  /** Patches anywhere on the dial with outcomes by lot. */
  private static List<Patch> log(Random random) {
    return log(random, random.nextInt(12));
  }

  private static List<Patch> log(Random random, int count) {
    InventedShop shop = InventedShop.draw(random.nextDouble(), 0.3, random.nextInt());
    List<Patch> patches = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      patches.add(
          shop.burn(
              InventedShop.BENCH.settings(5 + random.nextInt(96), 3 + 97 * random.nextDouble()),
              random.nextInt(4),
              1 + random.nextInt(6)));
    }
    return patches;
  }

  private static List<Burned> uncharred(List<Patch> patches) {
    return patches.stream()
        .filter(p -> p.readings().stream().anyMatch(r -> !r.outcome().charred()))
        .map(p -> new Burned(p.exposure().doseJoulesPerCm2(), p.exposure().intensity()))
        .toList();
  }

  /** At most a quarter more dose and a quarter more fluence than one patch that did not char. */
  private static boolean allowed(Burned next, List<Burned> uncharred) {
    return uncharred.isEmpty()
        ? next.dose() <= Math.exp(lnFirst) * (1 + 1e-9)
        : uncharred.stream()
            .anyMatch(
                b ->
                    next.dose() <= 1.25 * b.dose() * (1 + 1e-9)
                        && next.fluence() <= 1.25 * b.fluence() * (1 + 1e-9));
  }

  private record Burned(double dose, double fluence) {
    static Burned at(DialSetting setting) {
      return new Burned(setting.doseJoulesPerCm2(), setting.intensity());
    }
  }
}
