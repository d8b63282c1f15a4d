package charline.shops;

import charline.shops.Scenario.Weights;
import java.util.List;

/** All scenarios, in the order of the report. */
public final class Scenarios {
  private Scenarios() {}

  public static List<Scenario> all() {
    Scenario usual = Scenario.usual();
    return List.of(
        usual,
        usual
            .with(Weights.FROM_PRIOR)
            .named("prior", "model true, everything but tau drawn from the priors"),
        usual.widened(2).named("wide", "transitions twice as wide"),
        usual.with(Noise.NORMAL).named("normal", "normal noise"),
        usual.with(Noise.GUMBEL_EARLY).named("gumbel-early", "Gumbel noise, long tail early"),
        usual.with(Noise.GUMBEL_LATE).named("gumbel-late", "Gumbel noise, long tail late"),
        usual.withBoardSpread(0).named("boards-0", "boards all alike"),
        usual.withBoardSpread(0.3).named("boards-0.3", "boards 0.3"),
        usual.withBoardSpread(0.5).named("boards-0.5", "boards 0.5"),
        usual.with(Weights.WEAK).named("weak", "fluence and passes count hardly at all"),
        usual.with(Weights.STRONG).named("strong", "fluence and passes count more than dose"),
        usual.misgrading(0.05).named("misgraded", "5 % of readings misjudged"),
        usual.withGap(-0.3).named("gap--0.3", "gap e^-0.3: nothing works"),
        usual.withGap(0).named("gap-0", "gap e^0"),
        usual.withGap(0.3).named("gap-0.3", "gap e^0.3"),
        usual.withGap(0.6).named("gap-0.6", "gap e^0.6"),
        usual.withGap(1.3).named("gap-1.3", "gap e^1.3"),
        usual.burning(18, 1).named("18x1", "18 patches on 1 board"),
        usual.burning(18, 2).named("18x2", "18 patches on 2 boards"),
        usual.burning(12, 3).named("12x3", "12 patches on 3 boards"),
        usual.burning(24, 4).named("24x4", "24 patches on 4 boards"),
        usual.burning(36, 5).named("36x5", "36 patches on 5 boards"),
        usual.burning(48, 5).named("48x5", "48 patches on 5 boards"),
        usual
            .withBoardSpread(0.3)
            .burning(12, 3)
            .named("12x3-boards-0.3", "12 patches on 3 boards, boards 0.3"),
        usual
            .withBoardSpread(0.3)
            .burning(36, 5)
            .named("36x5-boards-0.3", "36 patches on 5 boards, boards 0.3"),
        usual
            .withBoardSpread(0.5)
            .burning(36, 6)
            .named("36x6-boards-0.5", "36 patches on 6 boards, boards 0.5"),
        usual.readOnce().named("once", "one reading a patch"),
        usual.readOnce().burning(48, 5).named("once-48x5", "one reading a patch, 48 on 5 boards"),
        usual
            .withBoardSpread(0.3)
            .readOnce()
            .burning(36, 3)
            .named("once-36x3-boards-0.3", "one reading a patch, 36 on 3 boards, boards 0.3"));
  }
}
