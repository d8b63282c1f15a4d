package charline.pooling;

import charline.model.Estimate;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.model.way.Coating;
import charline.model.way.Trait;
import charline.model.way.Way;
import charline.shops.Law;
import charline.shops.ShopBench;
import charline.trial.Coat;
import charline.trial.Tone;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Trials that mix pale and dark coats whose true ratio of dose is known, 24 patches on 4 boards.
 *
 * @param factor the truth: dose of pale over dark
 * @param found what the model found
 * @param pale what a pale coat was promised
 */
record ToneTrial(double factor, Estimate found, Told pale) {
  static final List<Double> FACTORS = List.of(1.0, 2.0, 3.0, 4.0, 6.0);
  private static final Law CHARRING = ShopBench.law(4.3, 0.4, 0.5, 0.2, 0.15);
  private static final Law CLEARING = ShopBench.law(2.0, 0.7, 0.8, 0.2, 0.15);

  /** How tones lie on boards. */
  enum Layout {
    BOTH_ON_EVERY_BOARD,
    ONE_TO_A_BOARD
  }

  static List<ToneTrial> of(Layout layout, double factor, int trials) {
    return IntStream.range(PoolingReport.FIRST_WORLD, PoolingReport.FIRST_WORLD + trials)
        .parallel()
        .mapToObj(n -> one(layout, factor, n))
        .toList();
  }

  private static ToneTrial one(Layout layout, double factor, int number) {
    double shift = Math.log(factor);
    Trials burned =
        Yard.burn(
            new Yard.Job("latex", "pine", CHARRING, CLEARING, Map.of(Trait.TONE, shift), 24, 4),
            (patch, board) -> coat(layout, patch, board),
            new Random(1000L * number + 7));
    Trials pale =
        new Trials(
            burned.stratum(),
            burned.patches(),
            false,
            Way.UNSAID.with(new Coating(Optional.of(Tone.PALE), OptionalDouble.empty())));
    ModelFit fit = Fitter.withDefaults().fit(pale, Event.CLEARING);
    return new ToneTrial(
        factor,
        fit.wayEffects().get(0).factor(),
        Told.of(
            "tone " + factor,
            number,
            "pale",
            WindowFinder.withDefaults()
                .recommend(
                    pale,
                    RigSetup.of(ShopBench.RIG, pale.patches(), ShopBench.DAY),
                    Requirements.USUAL),
            CHARRING,
            CLEARING.moved(shift / 2)));
  }

  private static Coat coat(Layout layout, int patch, int board) {
    int turn = layout == Layout.ONE_TO_A_BOARD ? board : patch / 4 + board;
    return new Coat(
        "latex", Optional.of(turn % 2 == 0 ? Tone.PALE : Tone.DARK), OptionalDouble.empty());
  }

  boolean covered() {
    return found.low() <= factor && factor <= found.high();
  }
}
