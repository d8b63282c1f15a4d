package charline.window;

import charline.model.Event;
import charline.model.Prior;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.Arrays;
import java.util.List;

/**
 * How far patches bear a limit out, whatever the models say.
 *
 * <p>Char never falls as power or passes rise or the hand slows, whatever intensity by itself
 * counts for, so a patch that came through unharmed speaks for every setting with no more power, no
 * slower a hand and no more passes. A window goes no hotter than four patches that were burned in
 * its way (rig, figure, place, rest, wetting) and came through; where fewer than 16 were, than one
 * in five of them. The largest box that the models allow leans on its hottest corner, where they
 * are least sure: among the simulated shops that chose the rule, it took 20 broken promises of char
 * down to 8, and 163 windows to 158, of 280 shops of six kinds. What other ways do says less: with
 * twelve lines and six circles, two of the circles have to come through.
 *
 * <p>Where no patch charred, the onset of char is known from below only, and how far off it lies is
 * the prior's word. Until a patch has charred, a window reaches no hotter than six patches that
 * came through; until three have kept finish, no cooler than six that cleared: clearing never falls
 * with dose, intensity or passes. In simulated shops without this rule nearly every window without
 * a charred patch broke its char promise where passes count for little (reports/validation.md).
 */
final class SupportingPatches {
  /** As many patches as a window takes at all. */
  static final int FEWEST = Findings.FEWEST_PATCHES;

  private static final int FEWEST_CHARRED = 1;
  static final int FEWEST_UNCLEARED = 3;

  /** Of the way that is asked about, where there are enough. */
  private static final int MOST_UNHARMED = 4;

  /** Where fewer were burned, one in so many has to come through. */
  private static final int ONE_IN = 5;

  /** No dial repeats an intensity to better than this, in ln units. */
  private static final double ALIKE = 0.03;

  private final List<Witness> harmless;
  private final List<Witness> ownHarmless;
  private final int inSameWay;
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

  SupportingPatches(Trials trials) {
    List<Patch> patches = trials.patches();
    List<Patch> own = trials.inSameWay();
    inSameWay = own.size();
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

  private SupportingPatches(SupportingPatches of, int inSameWay) {
    harmless = of.harmless;
    ownHarmless = of.ownHarmless;
    cleared = of.cleared;
    charSeen = of.charSeen;
    finishSeen = of.finishSeen;
    this.inSameWay = inSameWay;
  }

  /** The same where no patch of the way itself has to come through. */
  SupportingPatches askingForNone() {
    return new SupportingPatches(this, 0);
  }

  private static int passesWithoutChar(Patch patch) {
    return patch.readings().stream()
        .takeWhile(r -> !r.outcome().charred())
        .mapToInt(Reading::passes)
        .max()
        .orElse(0);
  }

  /** Patches burned in the way that is asked about. */
  int inSameWay() {
    return inSameWay;
  }

  /** How many of them have to come through every setting of a window. */
  int unharmedWanted() {
    return Math.min(MOST_UNHARMED, (inSameWay + ONE_IN - 1) / ONE_IN);
  }

  boolean charSeen() {
    return charSeen;
  }

  boolean finishSeen() {
    return finishSeen;
  }

  /** The hottest ln dose that patches bear out at this intensity and passes. */
  double lnHottest(double lnIntensity, int passes) {
    double uncharred = lnHottestUncharred(lnIntensity, passes);
    return inSameWay == 0
        ? uncharred
        : Math.min(uncharred, reached(ownHarmless, unharmedWanted(), lnIntensity, passes));
  }

  /** The same as long as no patch has charred; then infinity. */
  private double lnHottestUncharred(double lnIntensity, int passes) {
    return charSeen ? Double.POSITIVE_INFINITY : reached(harmless, FEWEST, lnIntensity, passes);
  }

  /**
   * The ln dose that so many patches with no less power and passes reach at this intensity, at
   * their own speed.
   */
  private static double reached(
      List<Witness> witnesses, int fewest, double lnIntensity, int passes) {
    Smallest below = new Smallest(fewest);
    for (Witness w : witnesses) {
      if (w.lnIntensity >= lnIntensity - ALIKE && w.passes >= passes) {
        below.add(-(w.lnDose + Prior.Weight.OF_POWER * Math.max(0, w.lnIntensity - lnIntensity)));
      }
    }
    return -below.last();
  }

  /** The ln dose within which six patches cleared at this intensity and passes, or less of both. */
  double lnColdest(double lnIntensity, int passes) {
    if (finishSeen) {
      return Double.NEGATIVE_INFINITY;
    }
    Smallest above = new Smallest(FEWEST);
    for (Witness w : cleared) {
      if (w.lnIntensity <= lnIntensity + ALIKE && w.passes <= passes) {
        above.add(w.lnDose);
      }
    }
    return above.last();
  }

  /** The smallest few of many values, rising; infinity where there are fewer. */
  private static final class Smallest {
    private final double[] values;

    Smallest(int few) {
      values = new double[few];
      Arrays.fill(values, Double.POSITIVE_INFINITY);
    }

    void add(double value) {
      int place = values.length - 1;
      if (value >= values[place]) {
        return;
      }
      for (; place > 0 && values[place - 1] > value; place--) {
        values[place] = values[place - 1];
      }
      values[place] = value;
    }

    double last() {
      return values[values.length - 1];
    }
  }

  /** Whether limits that no patch crossed are borne out at a setting. */
  boolean bear(double lnDose, double lnIntensity, int passes, Strokes strokes) {
    return lnDose <= lnHottestUncharred(lnIntensity, strokes.mostPasses(passes))
        && lnDose >= lnColdest(lnIntensity, passes);
  }

  /** Whether as many patches came through a setting as a window asks for. */
  boolean bearOut(double lnDose, double lnIntensity, int passes, Strokes strokes) {
    return lnDose <= lnHottest(lnIntensity, strokes.mostPasses(passes));
  }
}
