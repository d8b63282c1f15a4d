package charline.model.classical;

import charline.stat.check.HosmerLemeshow;
import charline.stat.check.RiskCheck;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A fit beside what was seen. Every reading that could still show the event is held against its
 * chance given the readings before, so that nothing hangs on when a patch was left.
 *
 * @param readings how many
 * @param brier mean squared distance of chance and outcome
 * @param brierOfShare the same if every reading had the overall share as its chance
 * @param brierLeftOut with every patch judged by a fit to the others, if all those exist
 * @param leftOutTrouble why not
 * @param hosmerLemeshow the test, if there are readings enough
 * @param hosmerLemeshowTrouble why not
 */
public record ClassicalChecks(
    int readings,
    double brier,
    double brierOfShare,
    OptionalDouble brierLeftOut,
    Optional<String> leftOutTrouble,
    Optional<GroupTest> hosmerLemeshow,
    Optional<String> hosmerLemeshowTrouble) {
  private static final int ROWS_A_GROUP = 5;
  private static final int MOST_GROUPS = 10;
  private static final int FEWEST_GROUPS = 3;

  /**
   * Hosmer and Lemeshow's test with groups cut at quantiles of the chances.
   *
   * @param groups how many came about
   * @param statistic chi-square
   * @param degreesOfFreedom groups less 2
   * @param probability of a larger statistic if the fit were right
   */
  public record GroupTest(int groups, double statistic, int degreesOfFreedom, double probability) {}

  static ClassicalChecks of(PatchRows rows, Method method, Fitted fit) {
    List<Integer> outcomes = new ArrayList<>();
    List<Double> chances = new ArrayList<>();
    for (int p = 0; p < rows.patchCount(); p++) {
      for (PatchRows.Look look : rows.looks(p)) {
        outcomes.add(look.shown() ? 1 : 0);
        chances.add(chance(fit, look));
      }
    }
    int[] seen = outcomes.stream().mapToInt(Integer::intValue).toArray();
    double[] fitted = chances.stream().mapToDouble(Double::doubleValue).toArray();
    double share = outcomes.stream().mapToInt(Integer::intValue).average().orElseThrow();
    LeftOut leftOut = leftOut(rows, method);
    Groups groups = groups(seen, fitted);
    return new ClassicalChecks(
        seen.length,
        RiskCheck.of(seen, fitted).brier(),
        share * (1 - share),
        leftOut.brier(),
        leftOut.trouble(),
        groups.test(),
        groups.trouble());
  }

  /** (L(now) - L(before)) / (1 - L(before)), kept off 0 and 1, where rounding would end it. */
  private static double chance(Fitted fit, PatchRows.Look look) {
    double now = fit.chance(look.now());
    if (look.before() == null) {
      return inside(now);
    }
    double before = fit.chance(look.before());
    return inside((now - before) / Math.max(1 - before, 1e-12));
  }

  private static double inside(double chance) {
    return Math.min(1 - 1e-9, Math.max(1e-9, chance));
  }

  private record LeftOut(OptionalDouble brier, Optional<String> trouble) {}

  private static LeftOut leftOut(PatchRows rows, Method method) {
    double squares = 0;
    int readings = 0;
    for (int p = 0; p < rows.patchCount(); p++) {
      Optional<Fitted> others = fitWithout(p, rows, method);
      if (others.isEmpty()) {
        return new LeftOut(
            OptionalDouble.empty(),
            Optional.of(
                "without patch %s there is no fit by %s, so the fit depends on that one patch"
                    .formatted(rows.patch(p).code(), method.words())));
      }
      for (PatchRows.Look look : rows.looks(p)) {
        double distance = (look.shown() ? 1 : 0) - chance(others.get(), look);
        squares += distance * distance;
        readings++;
      }
    }
    return new LeftOut(OptionalDouble.of(squares / readings), Optional.empty());
  }

  private static Optional<Fitted> fitWithout(int patch, PatchRows rows, Method method) {
    try {
      return method.fit(rows, patch).fitted();
    } catch (IllegalArgumentException unsolvable) {
      return Optional.empty();
    }
  }

  private record Groups(Optional<GroupTest> test, Optional<String> trouble) {}

  private static Groups groups(int[] seen, double[] fitted) {
    int wanted = Math.min(MOST_GROUPS, seen.length / ROWS_A_GROUP);
    if (wanted < FEWEST_GROUPS) {
      return new Groups(
          Optional.empty(),
          Optional.of(
              "it needs %d readings or more, and there are %d"
                  .formatted(FEWEST_GROUPS * ROWS_A_GROUP, seen.length)));
    }
    HosmerLemeshow.Outcome outcome =
        HosmerLemeshow.withDefaults().withGroups(wanted).test(seen, fitted);
    return outcome instanceof HosmerLemeshow.Tested tested
        ? new Groups(
            Optional.of(
                new GroupTest(
                    tested.groups().size(),
                    tested.statistic(),
                    tested.degreesOfFreedom(),
                    tested.probability())),
            Optional.empty())
        : new Groups(
            Optional.empty(),
            Optional.of(
                "the chances do not fall into three groups, because the settings were too alike"));
  }
}
