package charline.wording;

import charline.log.merge.Merged;
import charline.log.merge.SetUpTwice;

/** What joining another log brought in, as JSON. */
public final class MergeJson {
  private MergeJson() {}

  /**
   * Counts of what is new, and what is left to say, a sentence each.
   *
   * @param file the other log
   */
  public static Json of(String file, Merged merged) {
    return new Json()
        .put("file", file)
        .put("patches", merged.patches())
        .put("void", merged.newVoid())
        .put("readings", merged.readings())
        .put("plans", merged.plans().added())
        .put("plans_burned_there", merged.plans().burned())
        .put("plans_given_up_there", merged.plans().givenUp())
        .put("photos", merged.photos())
        .put("woods", merged.woods())
        .put("families", merged.families())
        .put("rigs", merged.rigs())
        .put("power_checks", sum(merged.powers().checks().values()))
        .put("patches_with_another_power", merged.powers().patches())
        .put("upkeep", sum(merged.upkeep().values()))
        .put("boards", merged.boards())
        .put("finishes", merged.finishes())
        .put("samples", merged.samples())
        .put("amended", merged.amended())
        .put("amended_to_void", merged.voided())
        .put("settled", merged.settled())
        .put("notes", merged.notes())
        .put("joined", merged.joined().stream().map(MergeJson::pair).toList())
        .put("set_up_twice", merged.twice().stream().map(MergeJson::pair).toList())
        .put("damage", merged.damage())
        .put("conflicts", merged.conflicts());
  }

  private static int sum(Iterable<Integer> counts) {
    int sum = 0;
    for (int count : counts) {
      sum += count;
    }
    return sum;
  }

  private static Json pair(SetUpTwice pair) {
    return new Json()
        .put("kind", pair.kind().word())
        .put("name", pair.name())
        .put("known", pair.known());
  }
}
