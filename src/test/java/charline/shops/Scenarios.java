package charline.shops;

import charline.shops.Scenario.Weights;
import java.util.List;
import java.util.stream.Stream;

/** All scenarios, in the order of the report. */
public final class Scenarios {
  private Scenarios() {}

  /** Those in which a piece of each shop is looked at too. */
  public static List<Scenario> withPieces() {
    Scenario usual = Scenario.usual();
    return List.of(
        usual,
        usual.withBoardSpread(0.3).named("boards-0.3", "boards 0.3"),
        usual.withBoardSpread(0.5).named("boards-0.5", "boards 0.5"),
        usual.withGap(0.6).named("gap-0.6", "gap e^0.6"),
        usual.withGap(-0.3).named("gap--0.3", "gap e^-0.3: nothing works"),
        usual
            .with(new Scenario.Boards(0.15, 0.15, false, true))
            .named("boards-anew", "boards differ by 0.05 to 0.5, otherwise in every stratum"),
        usual
            .with(new Scenario.Boards(0.2, 0.2, true, false))
            .named("boards-heavy", "boards 0.2, heavy-tailed (t with 3 degrees of freedom)"),
        usual
            .with(new Scenario.Boards(0.15, 0.4, false, false))
            .named("boards-apart", "boards 0.15 for char, 0.4 for clearing"),
        usual
            .jobOffBy(0.1)
            .named("job-off", "dose of the job off by 10 % (one standard deviation)"));
  }

  /** Those in which only windows for any board are looked at. */
  static List<Scenario> others() {
    Scenario usual = Scenario.usual();
    return List.of(
        usual
            .with(Weights.FROM_PRIOR)
            .named("prior", "model true, everything but tau drawn from the priors"),
        usual.widened(2).named("wide", "transitions twice as wide"),
        usual
            .widened(2)
            .burning(24, 3)
            .named("wide-24x3", "transitions twice as wide, 24 patches on 3 boards"),
        usual.with(Noise.GUMBEL_EARLY).named("gumbel-early", "Gumbel noise, long tail early"),
        usual.with(Noise.GUMBEL_LATE).named("gumbel-late", "Gumbel noise, long tail late"),
        usual.with(Weights.WEAK).named("weak", "fluence and passes count hardly at all"),
        usual.with(Weights.STRONG).named("strong", "fluence and passes count more than dose"),
        usual.misgrading(0.05).named("misgraded", "5 % of readings misjudged"),
        usual.burning(12, 3).named("12x3", "12 patches on 3 boards"),
        usual.burning(36, 5).named("36x5", "36 patches on 5 boards"),
        usual.readOnce().burning(48, 5).named("once-48x5", "one reading a patch, 48 on 5 boards"));
  }

  public static List<Scenario> all() {
    return Stream.concat(withPieces().stream(), others().stream()).toList();
  }
}
