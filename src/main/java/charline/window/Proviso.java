package charline.window;

import charline.model.CoatContradiction;
import charline.model.ModelFit;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What a person has to know to use an answer as it is meant. */
public sealed interface Proviso {
  /**
   * The limit that is kept is below half a patch in all that were burned, so that most likely none
   * of them would show it: the answer hangs on the shape that the model gives the tail of the risk.
   *
   * @param charRisk the limit
   * @param patches patches behind the answer
   */
  record HangsOnTail(double charRisk, int patches) implements Proviso {
    /** Expected charred patches below which most likely none is seen. */
    private static final double SHOWN = 0.5;

    /** With fewer patches than this it is their number that has to be said, not their tail. */
    private static final int FEW = 10;

    private static Optional<HangsOnTail> of(double charRisk, int patches) {
      return charRisk * Math.max(patches, FEW) < SHOWN
          ? Optional.of(new HangsOnTail(charRisk, patches))
          : Optional.empty();
    }
  }

  /**
   * The seams of the window get more passes than any patch had.
   *
   * @param passes passes of a seam
   * @param mostTried most passes of any patch
   */
  record SeamBeyondTrials(int passes, int mostTried) implements Proviso {}

  /**
   * A patch without tint is clear whether tint is accepted or not, yet the models, which are fitted
   * apart, are surer of the start setting where none is accepted: few patches were left with tint.
   *
   * @param accepting lower bound of the clearing chance with tint accepted
   * @param without the same without
   */
  record TintLeavesLess(double accepting, double without) implements Proviso {
    /** Two bounds that differ by less were told apart by the draws alone. */
    private static final double NOTICED = 0.01;

    /** The same where it is so; else empty. */
    public static Optional<TintLeavesLess> of(double accepting, double without) {
      return without > accepting + NOTICED
          ? Optional.of(new TintLeavesLess(accepting, without))
          : Optional.empty();
    }
  }

  /** The trials contradict themselves about the coat, so that what is clean may not be. */
  record CoatContradicted(CoatContradiction what) implements Proviso {}

  /**
   * What has to be known beside an answer, the weightiest first.
   *
   * @param charRisk the limit that the answer keeps; 1 if it keeps none
   * @param patches behind the answer
   * @param seamPasses passes of a seam in the setting that it names; empty if it names none
   * @param tint where tint is accepted and that leaves less
   * @param clearing the removal model; empty where there is nothing to fit
   */
  static List<Proviso> of(
      double charRisk,
      List<Patch> patches,
      OptionalInt seamPasses,
      Optional<TintLeavesLess> tint,
      Optional<ModelFit> clearing) {
    List<Proviso> all = new ArrayList<>();
    HangsOnTail.of(charRisk, patches.size()).ifPresent(all::add);
    int mostTried = patches.stream().mapToInt(p -> p.lastReading().passes()).max().orElse(0);
    if (seamPasses.orElse(0) > mostTried) {
      all.add(new SeamBeyondTrials(seamPasses.getAsInt(), mostTried));
    }
    tint.ifPresent(all::add);
    clearing.ifPresent(
        fit ->
            CoatContradiction.in(patches, fit)
                .forEach(what -> all.add(new CoatContradicted(what))));
    return List.copyOf(all);
  }
}
