package charline.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Patches as the successes and failures of a logistic regression, each that is alike to the last
 * bit held once and counted: people dial the same settings again and again.
 *
 * @param distinct trials of different settings or outcome
 * @param boards of each board that is unlike the ones before it, which of them it had, rising
 * @param alike how many boards had the very same trials, as those of one control patch often do
 * @param lnPassRatios ln(h/l) of the patches whose event came between two readings l and h, rising
 * @param withRatio how many patches have each
 */
record CountedTrials(
    Trial[] distinct, int[][] boards, int[] alike, double[] lnPassRatios, int[] withRatio) {

  /**
   * One success (+1) or failure (-1).
   *
   * @param lnIntensity over the reference intensity
   */
  record Trial(double lnDose, double lnIntensity, double lnPasses, double[] way, int sign) {
    /** Equal for trials that are alike to the last bit. */
    private List<Object> setting() {
      List<Object> all = new ArrayList<>(List.of(lnDose, lnIntensity, lnPasses, sign));
      Arrays.stream(way).forEach(all::add);
      return all;
    }

    /** What the trial has beyond the middle of the threshold, in ln dose, at some parameters. */
    double margin(double[] p) {
      double margin =
          lnDose
              + p[PassesToEvent.PHI] * lnIntensity
              + p[PassesToEvent.PSI] * lnPasses
              - p[PassesToEvent.TAU];
      for (int k = 0; k < way.length; k++) {
        margin -= p[PassesToEvent.WAY + k] * way[k];
      }
      return margin;
    }
  }

  /**
   * Counts what patches say.
   *
   * @param lnReference natural logarithm of the reference intensity
   */
  static CountedTrials of(List<CensoredPasses> data, double lnReference) {
    Map<List<Object>, Integer> numbers = new HashMap<>();
    List<Trial> different = new ArrayList<>();
    Map<Integer, List<Integer>> byBoard = new TreeMap<>();
    for (CensoredPasses patch : data) {
      List<Integer> had = byBoard.computeIfAbsent(patch.board(), b -> new ArrayList<>());
      for (Trial trial : trials(patch, lnReference)) {
        int number = numbers.computeIfAbsent(trial.setting(), t -> different.size());
        if (number == different.size()) {
          different.add(trial);
        }
        had.add(number);
      }
    }
    Map<List<Integer>, Integer> counts = new LinkedHashMap<>();
    byBoard.values().forEach(had -> counts.merge(had.stream().sorted().toList(), 1, Integer::sum));
    Map<Double, Integer> ratios = new TreeMap<>();
    data.stream()
        .filter(d -> d.seen() && d.passesWithout() > 0)
        .forEach(
            d ->
                ratios.merge(
                    Math.log((double) d.passesWith() / d.passesWithout()), 1, Integer::sum));
    return new CountedTrials(
        different.toArray(Trial[]::new),
        counts.keySet().stream()
            .map(had -> had.stream().mapToInt(number -> number).toArray())
            .toArray(int[][]::new),
        counts.values().stream().mapToInt(count -> count).toArray(),
        ratios.keySet().stream().mapToDouble(r -> r).toArray(),
        ratios.values().stream().mapToInt(n -> n).toArray());
  }

  private static List<Trial> trials(CensoredPasses d, double lnReference) {
    double f = d.lnIntensity() - lnReference;
    List<Trial> both = new ArrayList<>(2);
    if (d.passesWithout() > 0) {
      both.add(new Trial(d.lnDose(), f, Math.log(d.passesWithout()), d.way(), -1));
    }
    if (d.seen()) {
      both.add(new Trial(d.lnDose(), f, Math.log(d.passesWith()), d.way(), 1));
    }
    return both;
  }

  /** Trials of the board that has most of them. */
  int mostOnABoard() {
    return Arrays.stream(boards).mapToInt(board -> board.length).max().orElse(0);
  }
}
