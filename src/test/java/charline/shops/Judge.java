package charline.shops;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Asks for the window of a shop and holds it against what is true there. */
final class Judge {
  static final Requirements ASKED = Requirements.USUAL;

  private static final int PROBED_SETTINGS = 4;
  private static final int PROBED_PASSES = 3;

  private Judge() {}

  static Judged judge(Scenario scenario, int number) {
    long started = System.nanoTime();
    Shop shop = Shop.draw(scenario, number);
    Trials trials = new Trials(Stratum.of(shop.patches().get(0)), shop.patches(), false);
    RigSetup bench = RigSetup.of(ShopBench.RIG, shop.patches(), ShopBench.DAY);
    WindowFinder finder = WindowFinder.withDefaults();
    Fitter fitter = finder.fitter();
    ModelFit charring = fitter.fit(trials, Event.CHAR);
    ModelFit clearing = fitter.fit(trials, Event.CLEARING);
    Recommendation answer = finder.recommend(trials, bench, ASKED, charring, clearing);
    Recommendation unwary = finder.unwary().recommend(trials, bench, ASKED, charring, clearing);
    List<Judged.Probe> probes = probes(shop, charring, clearing, new Random(number));
    return new Judged(
        scenario.code(),
        number,
        answer.verdict(),
        answer.chosen().map(box -> kept(shop, box)),
        unwary.chosen().map(box -> kept(shop, box)),
        FirthWindow.largest(shop.patches()).map(box -> kept(shop, box)),
        probes,
        (System.nanoTime() - started) / 1e9);
  }

  private static Judged.Kept kept(Shop shop, Box box) {
    return new Judged.Kept(
        chance(shop.charring(), box.hotCorner()), chance(shop.clearing(), box.coldCorner()));
  }

  private static Judged.Kept kept(Shop shop, FirthWindow.Box box) {
    return new Judged.Kept(
        chance(shop.charring(), box.hot(), box.passes()),
        chance(shop.clearing(), box.cold(), box.passes()));
  }

  private static double chance(Law law, FirthWindow.Corner at, int passes) {
    return law.newBoardChance(at.dose(), ShopBench.intensity(at.percent()), passes);
  }

  private static double chance(Law law, Forecast at) {
    return law.newBoardChance(at.doseJoulesPerCm2(), at.intensity(), at.passes());
  }

  private static List<Judged.Probe> probes(
      Shop shop, ModelFit charring, ModelFit clearing, Random random) {
    List<Judged.Probe> probes = new ArrayList<>();
    for (int k = 0; k < PROBED_SETTINGS; k++) {
      double[] knobs = Shop.anySetting(random);
      int passes = 1 + random.nextInt(PROBED_PASSES);
      probes.add(probe(shop.charring(), charring, knobs, passes, random.nextDouble()));
      probes.add(probe(shop.clearing(), clearing, knobs, passes, random.nextDouble()));
    }
    return probes;
  }

  private static Judged.Probe probe(
      Law law, ModelFit fit, double[] knobs, int passes, double luck) {
    double dose = ShopBench.dose(knobs[0], knobs[1]);
    double intensity = ShopBench.intensity(knobs[0]);
    double truth = law.newBoardChance(dose, intensity, passes);
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
