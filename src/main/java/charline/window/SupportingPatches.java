package charline.window;

import charline.model.Event;
import charline.model.Prior;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * How far patches bear a limit out that none of them crossed.
 *
 * <p>Where no patch charred, the onset of char is known from below only, and how far off it lies is
 * the prior's word. Char never falls as power or passes rise or the hand slows, whatever intensity
 * by itself counts for, so a patch that came through unharmed speaks for every setting with no more
 * power, no slower a hand and no more passes. Until a patch has charred, a window reaches no hotter
 * than six patches that came through; until three have kept finish, no cooler than six that
 * cleared: clearing never falls with dose, intensity or passes. In simulated shops without this
 * rule nearly every window without a charred patch broke its char promise where passes count for
 * little (reports/validation.md).
 *
 * <p>A way of working that most of the patches were not burned in borrows from them where it chars.
 * What it borrows leans to no difference, so a window for it reaches no hotter than one patch of
 * its own that came through as many passes. Of simulated windows for circles that char sooner than
 * the more numerous lines, this rule takes most of those that broke a promise, and a fifth of the
 * others (reports/ways.md).
 */
final class SupportingPatches {
  /** As many patches as a window takes at all. */
  static final int FEWEST = Findings.FEWEST_PATCHES;

  private static final int FEWEST_CHARRED = 1;
  static final int FEWEST_UNCLEARED = 3;

  /** Of the way that is asked about, where most patches were burned in others. */
  static final int FEWEST_OWN = 2;

  /** No dial repeats an intensity to better than this, in ln units. */
  private static final double ALIKE = 0.03;

  private final List<Witness> harmless;
  private final List<Witness> ownHarmless;
  private final Optional<HardlyTried> hardlyTried;
  private final List<Witness> cleared;
  private final boolean charSeen;
  private final boolean finishSeen;

  /**
   * @param passes most passes without char, or fewest that cleared
   */
  private record Witness(double lnDose, double lnIntensity, int passes) {
    static Witness of(Patch patch, int passes) {
      return new Witness(
          Math.log(patch.exposure().doseJoulesPerCm2()),
          Math.log(patch.exposure().intensity()),
          passes);
    }
  }

  /**
   * A way of working in which fewer than half of the patches were burned.
   *
   * @param own patches burned in it
   * @param all patches of the trials
   */
  record HardlyTried(int own, int all) {}

  SupportingPatches(Trials trials) {
    List<Patch> patches = trials.patches();
    List<Patch> own = trials.inSameWay();
    hardlyTried =
        2 * own.size() < patches.size()
            ? Optional.of(new HardlyTried(own.size(), patches.size()))
            : Optional.empty();
    ownHarmless = own.stream().map(p -> Witness.of(p, passesWithoutChar(p))).toList();
    charSeen = trials.evidence().charredPatches() >= FEWEST_CHARRED;
    finishSeen = trials.patchesSeenUncleared() >= FEWEST_UNCLEARED;
    harmless =
        patches.stream()
            .filter(p -> !trials.shows(p, Event.CHAR))
            .map(p -> Witness.of(p, p.lastReading().passes()))
            .toList();
    cleared =
        patches.stream()
            .filter(p -> trials.shows(p, Event.CLEARING))
            .map(
                p ->
                    Witness.of(
                        p,
                        p.readings().stream()
                            .filter(r -> Event.CLEARING.shownBy(r.outcome(), trials.acceptTint()))
                            .findFirst()
                            .orElseThrow()
                            .passes()))
            .toList();
  }

  private static int passesWithoutChar(Patch patch) {
    return patch.readings().stream()
        .takeWhile(r -> !r.outcome().charred())
        .mapToInt(Reading::passes)
        .max()
        .orElse(0);
  }

  Optional<HardlyTried> hardlyTried() {
    return hardlyTried;
  }

  boolean charSeen() {
    return charSeen;
  }

  boolean finishSeen() {
    return finishSeen;
  }

  /**
   * The ln dose that six harmless patches with no less power and passes reach at this intensity, at
   * their own speed, and that two of the same way reach where it was hardly tried.
   */
  double lnHottest(double lnIntensity, int passes) {
    return Math.min(
        charSeen ? Double.POSITIVE_INFINITY : reached(harmless, FEWEST, lnIntensity, passes),
        hardlyTried.isPresent()
            ? reached(ownHarmless, FEWEST_OWN, lnIntensity, passes)
            : Double.POSITIVE_INFINITY);
  }

  private static double reached(
      List<Witness> witnesses, int fewest, double lnIntensity, int passes) {
    return -farthest(
        witnesses.stream().filter(w -> w.lnIntensity >= lnIntensity - ALIKE && w.passes >= passes),
        w -> -(w.lnDose + Prior.Weight.OF_POWER * Math.max(0, w.lnIntensity - lnIntensity)),
        fewest);
  }

  /** The ln dose within which six patches cleared at this intensity and passes, or less of both. */
  double lnColdest(double lnIntensity, int passes) {
    return finishSeen
        ? Double.NEGATIVE_INFINITY
        : farthest(
            cleared.stream()
                .filter(w -> w.lnIntensity <= lnIntensity + ALIKE && w.passes <= passes),
            w -> w.lnDose,
            FEWEST);
  }

  /** The smallest value but so many less one; infinity if there are fewer. */
  private static double farthest(
      Stream<Witness> witnesses, ToDoubleFunction<Witness> value, int fewest) {
    DoubleStream sorted = witnesses.mapToDouble(value).sorted();
    return sorted.skip(fewest - 1).findFirst().orElse(Double.POSITIVE_INFINITY);
  }

  boolean bear(double lnDose, double lnIntensity, int passes, Strokes strokes) {
    return lnDose <= lnHottest(lnIntensity, strokes.mostPasses(passes))
        && lnDose >= lnColdest(lnIntensity, passes);
  }
}
