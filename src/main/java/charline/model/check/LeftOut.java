package charline.model.check;

import charline.model.Draw;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Trials;
import charline.stat.check.FalseDiscovery;
import charline.stat.sampling.SmoothedLeaveOneOut;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One patch, and what the model fitted to all the others says of it.
 *
 * @param patch the patch
 * @param logDensity ln of the chance of what was seen
 * @param unseen chance that each of its readings finds no event
 * @param kHat Pareto k-hat of leaving the patch out
 * @param refitted whether the model was fitted anew without it
 */
record LeftOut(
    ObservedPatch patch, double logDensity, double[] unseen, double kHat, boolean refitted) {

  /** One patch among more than these moves a fit too little to be worth a new one. */
  private static final int REFIT_AMONG = 200;

  /**
   * Leaves out every patch in turn; where k-hat is above its limit and it matters, by a new fit.
   */
  static List<LeftOut> all(
      List<ObservedPatch> patches,
      PatchPredictions replay,
      Fitter fitter,
      Trials trials,
      Event event,
      int draws) {
    boolean few = patches.size() <= REFIT_AMONG;
    return IntStream.range(0, patches.size())
        .parallel() // a new fit takes as long as all the rest
        .mapToObj(
            i -> {
              SmoothedLeaveOneOut smoothed = SmoothedLeaveOneOut.of(replay.logLikelihood(i));
              return !few || smoothed.kHat() <= SmoothedLeaveOneOut.kHatLimit(draws)
                  ? of(patches.get(i), replay, i, smoothed, false)
                  : refit(
                      patches,
                      i,
                      fitter.fitWithout(trials, event, i).posterior().alike(draws),
                      smoothed.kHat());
            })
        .toList();
  }

  private static LeftOut refit(List<ObservedPatch> patches, int i, List<Draw> draws, double kHat) {
    ObservedPatch patch = patches.get(i);
    // The patch itself goes last, and only its own board says more of it than the draws do.
    List<ObservedPatch> board = new ArrayList<>();
    for (int j = 0; j < patches.size(); j++) {
      if (j != i && patches.get(j).board() == patch.board()) {
        board.add(patches.get(j));
      }
    }
    board.add(patch);
    int last = board.size() - 1;
    PatchPredictions replay = new PatchPredictions(board, draws, 1);
    return of(
        patch, replay, last, SmoothedLeaveOneOut.refitted(replay.logLikelihood(last), kHat), true);
  }

  private static LeftOut of(
      ObservedPatch patch,
      PatchPredictions replay,
      int i,
      SmoothedLeaveOneOut leftOut,
      boolean refitted) {
    double[] unseen = new double[patch.readings()];
    for (int k = 0; k < unseen.length; k++) {
      unseen[k] = leftOut.mean(replay.unseen(i, k));
    }
    return new LeftOut(patch, leftOut.logDensity(), unseen, leftOut.kHat(), refitted);
  }

  /** Chance that a reading shows the event, none before having shown it. */
  double hazard(int reading) {
    double before = reading == 0 ? 1 : unseen[reading - 1];
    return before > 0 ? Math.max(0, Math.min(1, 1 - unseen[reading] / before)) : 1;
  }

  private double sooner() {
    int without = patch.seen() ? patch.readings() - 2 : patch.readings() - 1;
    return without < 0 ? 0 : 1 - unseen[without];
  }

  private double later() {
    return patch.seen() ? unseen[patch.readings() - 1] : 0;
  }

  private double tail() {
    double asSeen = Math.max(0, 1 - sooner() - later());
    return Math.min(1, 2 * Math.min(sooner() + asSeen / 2, later() + asSeen / 2));
  }

  /** All patches with their tails made comparable. */
  static List<PatchCheck> checks(List<LeftOut> all) {
    double[] adjusted = FalseDiscovery.adjust(all.stream().mapToDouble(LeftOut::tail).toArray());
    List<PatchCheck> checks = new ArrayList<>();
    for (int i = 0; i < adjusted.length; i++) {
      LeftOut p = all.get(i);
      checks.add(
          new PatchCheck(
              p.patch.code(),
              p.sooner(),
              Math.exp(p.logDensity),
              p.later(),
              p.tail(),
              adjusted[i],
              p.kHat,
              p.refitted));
    }
    return checks;
  }
}
