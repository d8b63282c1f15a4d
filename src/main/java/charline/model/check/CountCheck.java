package charline.model.check;

import charline.model.way.Factor;
import charline.model.way.Way;
import charline.model.way.WayDesign;
import charline.quantity.Figures;
import charline.stat.distribution.CountDistribution;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Events counted in a group of patches against what the model predicts for the same readings on the
 * same boards, each reading asking whether the event came since the one before (posterior
 * predictive check: Rubin 1984, Annals of Statistics 12:1151-1172; Gelman, Meng and Stern 1996,
 * Statistica Sinica 6:733-807).
 *
 * @param group what the patches have in common, in words
 * @param patches patches in the group
 * @param readings readings at which the event had not been seen before
 * @param seen of them, how many showed it
 * @param expected mean of the predicted count
 * @param low 5 % quantile of the predicted count
 * @param high 95 % quantile of the predicted count
 * @param tail two-sided tail probability of the seen count; it keeps away from 0 more than a
 *     p-value does, as the same trials made the prediction
 */
public record CountCheck(
    String group,
    int patches,
    int readings,
    int seen,
    double expected,
    int low,
    int high,
    double tail) {
  private static final int PATCHES_A_CLASS = 5;
  private static final int MOST_CLASSES = 4;

  /** By dose per pass: up to four classes of five patches or more. */
  static List<CountCheck> byDose(List<ObservedPatch> patches, PatchPredictions replay, int draws) {
    List<Integer> rising = new ArrayList<>();
    for (int i = 0; i < patches.size(); i++) {
      rising.add(i);
    }
    rising.sort((a, b) -> Double.compare(patches.get(a).lnDose(), patches.get(b).lnDose()));
    int n = rising.size();
    int classes = Math.max(1, Math.min(MOST_CLASSES, n / PATCHES_A_CLASS));
    List<CountCheck> checks = new ArrayList<>();
    int from = 0;
    for (int c = 1; c <= classes && from < n; c++) {
      int to = Math.max(from + 1, c * n / classes);
      while (to < n && sameDose(patches.get(rising.get(to - 1)), patches.get(rising.get(to)))) {
        to++;
      }
      List<Integer> members = rising.subList(from, to);
      String doses =
          Figures.span(
                  Math.exp(patches.get(members.get(0)).lnDose()),
                  Math.exp(patches.get(members.get(members.size() - 1)).lnDose()))
              + " J/cm2";
      checks.add(of(doses, patches, members, replay, draws));
      from = to;
    }
    return checks;
  }

  private static boolean sameDose(ObservedPatch a, ObservedPatch b) {
    return Math.abs(a.lnDose() - b.lnDose()) < 1e-9;
  }

  /** By board. */
  static List<CountCheck> byBoard(
      List<String> boardNames, List<ObservedPatch> patches, PatchPredictions replay, int draws) {
    Map<Integer, List<Integer>> boards = new LinkedHashMap<>();
    for (int i = 0; i < patches.size(); i++) {
      boards.computeIfAbsent(patches.get(i).board(), b -> new ArrayList<>()).add(i);
    }
    List<CountCheck> checks = new ArrayList<>();
    boards.forEach(
        (b, members) ->
            checks.add(of("board " + boardNames.get(b), patches, members, replay, draws)));
    return checks;
  }

  /** By rig and by figure, each where the model has a shift for it. */
  static List<CountCheck> byWay(
      WayDesign ways,
      List<Way> made,
      List<ObservedPatch> patches,
      PatchPredictions replay,
      int draws) {
    List<CountCheck> checks = new ArrayList<>();
    for (Factor factor : ways.factors()) {
      if (factor instanceof Factor.Named names) {
        Map<String, List<Integer>> groups = new TreeMap<>();
        for (int i = 0; i < made.size(); i++) {
          groups.computeIfAbsent(names.level(made.get(i)), l -> new ArrayList<>()).add(i);
        }
        groups.forEach(
            (level, members) ->
                checks.add(
                    of(names.trait().word() + " " + level, patches, members, replay, draws)));
      }
    }
    return checks;
  }

  private static CountCheck of(
      String group,
      List<ObservedPatch> all,
      List<Integer> members,
      PatchPredictions replay,
      int draws) {
    int readings = members.stream().mapToInt(i -> all.get(i).readings()).sum();
    int seen = (int) members.stream().filter(i -> all.get(i).seen()).count();
    double[] probability = new double[readings + 1];
    double[] chances = new double[readings];
    for (int s = 0; s < draws; s++) {
      int r = 0;
      for (int i : members) {
        for (int k = 0; k < all.get(i).readings(); k++) {
          chances[r++] = replay.hazard(i, k, s);
        }
      }
      double[] p = CountDistribution.ofTrials(chances);
      for (int k = 0; k <= readings; k++) {
        probability[k] += p[k];
      }
    }
    for (int k = 0; k <= readings; k++) {
      probability[k] /= draws;
    }
    CountDistribution count = new CountDistribution(probability);
    return new CountCheck(
        group,
        members.size(),
        readings,
        seen,
        count.mean(),
        count.quantile(0.05),
        count.quantile(0.95),
        count.tail(seen));
  }
}
