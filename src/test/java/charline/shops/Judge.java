package charline.shops;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.model.borrow.BoardSpreads;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Asks for the windows of a shop and holds them against what is true there. */
final class Judge {
  static final Requirements ASKED = Requirements.USUAL;

  private static final int PROBED_SETTINGS = 4;
  private static final int PROBED_PASSES = 3;

  /** Coats of the other strata in the log of a shop. */
  private static final List<String> OTHERS = List.of("alkyd", "shellac", "varnish", "stain");

  private Judge() {}

  /**
   * Judges one shop.
   *
   * @param pieces whether a piece of it is looked at too
   */
  static Judged judge(Scenario scenario, int number, boolean pieces) {
    long started = System.nanoTime();
    Shop shop = Shop.draw(scenario, number);
    Trials trials = trials(shop, shop.patches().get(0).finish().family());
    RigSetup bench = RigSetup.of(ShopBench.RIG, shop.patches(), ShopBench.DAY);
    Random random = new Random(number);
    double jobError = scenario.doseError() * random.nextGaussian();
    Fitter alone = Fitter.withDefaults();
    Fitter learned = new BoardSpreads(alone, others(scenario, number)).fitterFor(trials.stratum());
    ModelFit charring = learned.fit(trials, Event.CHAR);
    ModelFit clearing = learned.fit(trials, Event.CLEARING);
    Recommendation answer =
        new WindowFinder(learned).recommend(trials, bench, ASKED, charring, clearing);
    Recommendation unlearned = new WindowFinder(alone).recommend(trials, bench, ASKED);
    return new Judged(
        scenario.code(),
        number,
        answer.verdict(),
        answer.chosen().map(box -> kept(shop, box, jobError)),
        unlearned.chosen().map(box -> kept(shop, box, jobError)),
        ClassicalWindow.largest(trials).map(box -> kept(shop, box, jobError)),
        pieces
            ? Optional.of(new PieceJudge(shop, learned, bench, answer, random).judge(jobError))
            : Optional.empty(),
        probes(shop, charring, clearing, random),
        (System.nanoTime() - started) / 1e9);
  }

  private static Trials trials(Shop shop, String family) {
    Stratum burned = Stratum.of(shop.patches().get(0));
    return new Trials(
        new Stratum(family, burned.wood(), burned.emission(), burned.wavelengthNanometres()),
        shop.patches(),
        false);
  }

  /** Other coats that the same shop tried, on boards that differ as its boards do. */
  private static List<Trials> others(Scenario scenario, int number) {
    List<Trials> all = new ArrayList<>();
    for (String family : OTHERS) {
      Scenario other =
          Scenario.usual().with(scenario.boards()).named(scenario.code() + " " + family, "");
      all.add(trials(Shop.draw(other, number), family));
    }
    return all;
  }

  private static Judged.Kept kept(Shop shop, Box box, double jobError) {
    return new Judged.Kept(
        chance(shop, shop.charring(), box.hotCorner(), jobError),
        chance(shop, shop.clearing(), box.coldCorner(), jobError));
  }

  private static Judged.Kept kept(Shop shop, ClassicalWindow.Box box, double jobError) {
    return new Judged.Kept(
        chance(shop, shop.charring(), box.hot(), box.passes(), jobError),
        chance(shop, shop.clearing(), box.cold(), box.passes(), jobError));
  }

  private static double chance(
      Shop shop, Law law, ClassicalWindow.Corner at, int passes, double jobError) {
    return shop.truth()
        .newBoardChance(
            law, at.dose() * Math.exp(jobError), ShopBench.intensity(at.percent()), passes);
  }

  private static double chance(Shop shop, Law law, Forecast at, double jobError) {
    return shop.truth()
        .newBoardChance(
            law, at.doseJoulesPerCm2() * Math.exp(jobError), at.intensity(), at.passes());
  }

  private static List<Judged.Probe> probes(
      Shop shop, ModelFit charring, ModelFit clearing, Random random) {
    List<Judged.Probe> probes = new ArrayList<>();
    for (int k = 0; k < PROBED_SETTINGS; k++) {
      double[] knobs = Shop.anySetting(random);
      int passes = 1 + random.nextInt(PROBED_PASSES);
      probes.add(probe(shop, shop.charring(), charring, knobs, passes, random.nextDouble()));
      probes.add(probe(shop, shop.clearing(), clearing, knobs, passes, random.nextDouble()));
    }
    return probes;
  }

  private static Judged.Probe probe(
      Shop shop, Law law, ModelFit fit, double[] knobs, int passes, double luck) {
    double dose = ShopBench.dose(knobs[0], knobs[1]);
    double intensity = ShopBench.intensity(knobs[0]);
    double truth = shop.truth().newBoardChance(law, dose, intensity, passes);
    double[] chance = fit.posterior().newBoardChance(dose, intensity, passes);
    double[] below = new double[chance.length];
    for (int i = 0; i < chance.length; i++) {
      below[i] = chance[i] <= truth ? 1 : 0;
    }
    return new Judged.Probe(
        fit.event() == Event.CHAR,
        fit.posterior().mean(chance),
        fit.posterior().mean(below),
        luck < truth);
  }
}
