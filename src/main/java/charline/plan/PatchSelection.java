package charline.plan;

import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.model.Lookahead;
import charline.trial.Patch;
import charline.window.Requirements;
import charline.window.RigSetup;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Picks patches one after the other, each as if the ones before had come out as is likeliest.
 *
 * <p>A patch is worth what it is expected to take off the spread of the two dose limits at the
 * target, the setting with the best margin so far.
 */
final class PatchSelection {
  /** Candidates lie no further than this from the target, in ln dose. */
  private static final double REACH = 1.5;

  /** A climb of less than this, in ln dose, is none. */
  private static final double BARELY = 0.05;

  /** A power is aimed at where a hand can keep to doses so near the middle of its window. */
  private static final double NEAR = 0.3;

  private final RigSetup bench;
  private final Requirements asked;
  private final Site site;
  private final Outlook outlook;
  private final Ladder ladder;
  private final Dial dial;
  private final int mostPasses;
  private final List<Double> triedPowers = new ArrayList<>();

  /** What this list has so far, but for control patches. */
  private final List<DialSetting> listed = new ArrayList<>();

  private boolean anyChar;
  private OptionalDouble aimedPower = OptionalDouble.empty();

  /** A candidate with what it is worth. */
  record Draft(
      DialSetting setting,
      Settings settings,
      int passes,
      Place place,
      Purpose purpose,
      Motive motive,
      Gain gain) {
    Draft as(Purpose otherPurpose, Motive otherMotive) {
      return new Draft(setting, settings, passes, place, otherPurpose, otherMotive, gain);
    }
  }

  PatchSelection(
      RigSetup bench,
      Requirements asked,
      Site site,
      Outlook outlook,
      Ladder ladder,
      List<Patch> patches,
      int mostPasses) {
    this.bench = bench;
    this.asked = asked;
    this.site = site;
    this.outlook = outlook;
    this.ladder = ladder;
    this.mostPasses = mostPasses;
    dial = new Dial(bench);
    patches.forEach(
        p -> {
          double percent = Math.round(bench.powerForIntensity(p.exposure().intensity()));
          if (percent >= 1 && percent <= 100) {
            triedPowers.add(percent);
          }
        });
    anyChar = patches.stream().anyMatch(p -> p.lastReading().outcome().charred());
  }

  /**
   * The best patch on a board, taken for burned with its likeliest outcome; empty if none may be.
   */
  Optional<Draft> next(Place place) {
    if (triedPowers.isEmpty()) {
      return first(place);
    }
    Aim aim = aim();
    Optional<DialSetting> rung = anyChar || site == Site.PIECE ? Optional.empty() : rung(aim);
    return rung.isPresent()
        ? best(aim, List.of(rung.get()), place, true)
        : best(aim, aboutTarget(aim), place, false);
  }

  /**
   * The next rung, for as long as nothing has charred: only that tells how far the onset is. Power
   * climbs before the hand slows down, up to the power aimed at, because there most room is hoped
   * for; empty where the dial ends.
   */
  private Optional<DialSetting> rung(Aim aim) {
    double ceiling = ladder.lnCeiling();
    double reached = ceiling - Ladder.LN_STEP;
    double highest = Collections.max(triedPowers);
    double mostPower = Math.max(aim.powerPercent(), mainPower());
    return dial.powers(triedPowers).stream()
        .filter(power -> power <= mostPower)
        .sorted(Comparator.reverseOrder())
        .flatMap(power -> dial.settings(power, reached, ceiling).stream())
        .filter(s -> dial.isEasy(s.speedMillimetresPerSecond()) && permits(s))
        .filter(s -> s.lnDose() > reached + BARELY || s.powerPercent() > highest)
        .findFirst();
  }

  /** Settings near the middle of the window hoped for, at the power aimed at. */
  private List<DialSetting> aboutTarget(Aim aim) {
    double ceiling = ladder.lnCeiling();
    double middle = aim.target().lnMiddle();
    double high = Math.min(ceiling, middle + REACH);
    double low = Math.min(middle, ceiling) - REACH;
    List<DialSetting> all =
        power(aim.powerPercent(), low, high).stream()
            .flatMap(power -> dial.settings(power, low, high).stream())
            .filter(this::permits)
            .toList();
    List<DialSetting> different =
        all.stream().filter(s -> listed.stream().noneMatch(s::feelsLike)).toList();
    return different.isEmpty() ? all.stream().filter(listed::contains).toList() : different;
  }

  /**
   * A patch at a dose where everything charred so far; empty where no hand keeps to it with ease.
   * Power falls rather than the hand hurries.
   */
  Optional<Draft> cooler(double lnDose, Place place) {
    double mostPower = mainPower();
    Aim aim = aim();
    return dial.powers(triedPowers).stream()
        .filter(power -> power <= mostPower)
        .sorted(Comparator.reverseOrder())
        .flatMap(power -> dial.settings(power, lnDose - Ladder.LN_STEP / 2, lnDose).stream())
        .filter(s -> dial.isEasy(s.speedMillimetresPerSecond()))
        .findFirst()
        .flatMap(s -> best(aim, List.of(s), place, false))
        .map(draft -> draft.as(Purpose.HOT_SIDE, Motive.COOLER));
  }

  private boolean permits(DialSetting s) {
    return ladder.permits(s.lnDose(), s.lnIntensity());
  }

  /** The one of several settings that narrows the limits most, taken for burned. */
  private Optional<Draft> best(Aim aim, List<DialSetting> settings, Place place, boolean climbing) {
    Outlook.Target target = aim.target();
    Draft best = null;
    double bestGain = Double.NEGATIVE_INFINITY;
    Lookahead.Prospect bestChar = null;
    Lookahead.Prospect bestClear = null;
    for (DialSetting s : settings) {
      int passes = passes(s);
      if (passes == 0) {
        continue;
      }
      Lookahead.Prospect charring =
          outlook.charring().prospect(s.lnDose(), s.lnIntensity(), passes, place.id());
      Lookahead.Prospect clearing =
          outlook.clearing().prospect(s.lnDose(), s.lnIntensity(), passes, place.id());
      double hotAfter = target.hotSpreadAfter(charring);
      double coldAfter = target.coldSpreadAfter(clearing);
      double hotGain = target.hotSpread() - hotAfter;
      double coldGain = target.coldSpread() - coldAfter;
      if (hotGain + coldGain > bestGain) {
        bestGain = hotGain + coldGain;
        Purpose side = hotGain >= coldGain ? Purpose.HOT_SIDE : Purpose.COLD_SIDE;
        Purpose purpose = climbing ? Purpose.CLIMB : side;
        best = draft(s, passes, place, purpose, gain(target, hotAfter, coldAfter));
        bestChar = charring;
        bestClear = clearing;
      }
    }
    if (best != null) {
      listed.add(best.setting());
      take(best.setting(), bestChar, bestClear);
    }
    return Optional.ofNullable(best);
  }

  private Optional<Draft> first(Place place) {
    DialSetting s = dial.first(ladder.lnCeiling());
    int passes = passes(s);
    if (passes == 0 || !permits(s)) {
      return Optional.empty();
    }
    Lookahead.Prospect charring =
        outlook.charring().prospect(s.lnDose(), s.lnIntensity(), passes, place.id());
    Lookahead.Prospect clearing =
        outlook.clearing().prospect(s.lnDose(), s.lnIntensity(), passes, place.id());
    Draft lowest = draft(s, passes, place, Purpose.CLIMB, new Gain.LowestRung());
    take(s, charring, clearing);
    return Optional.of(lowest);
  }

  private void take(DialSetting s, Lookahead.Prospect charring, Lookahead.Prospect clearing) {
    int charsBy = charring.likeliest();
    charring.assume(charsBy);
    clearing.assume(clearing.likeliest());
    anyChar |= charring.chance() > 0.5;
    // Only where the first pass is expected to leave the wood as it is does the ladder go on.
    if (charsBy > 1) {
      ladder.add(s.lnDose(), s.lnIntensity());
    }
    triedPowers.add(s.powerPercent());
  }

  /**
   * One power at a time: the nearest to the wanted one at which the ladder and a hand allow some of
   * the doses; empty where there is none.
   */
  private Optional<Double> power(double wanted, double lnLow, double lnHigh) {
    return dial.powers(triedPowers).stream()
        .filter(p -> dial.settings(p, lnLow, lnHigh).stream().anyMatch(this::permits))
        .min(Comparator.comparingDouble(p -> Math.abs(Math.log(p / wanted))));
  }

  /** The power that most patches had. */
  private double mainPower() {
    return triedPowers.stream()
        .max(
            Comparator.comparingLong((Double p) -> Collections.frequency(triedPowers, p))
                .thenComparing(p -> p))
        .orElseThrow();
  }

  /** The power and the number of passes with most room between the two promises. */
  private record Aim(double powerPercent, Outlook.Target target) {}

  /**
   * Where the widest window is to be hoped for. One list keeps to one power: knobs are turned one
   * at a time.
   */
  private Aim aim() {
    Aim now = aimedPower.isPresent() ? aim(aimedPower.getAsDouble()) : widest();
    aimedPower = OptionalDouble.of(now.powerPercent());
    return now;
  }

  /**
   * A power that was not tried is less sure of both doses, so it is aimed at only where it promises
   * more than it hides.
   */
  private Aim widest() {
    Aim best = aim(mainPower());
    for (double power : dial.powers(List.of())) {
      Aim other = aim(power);
      double middle = other.target().lnMiddle();
      boolean keepable = !dial.settings(power, middle - NEAR, middle + NEAR).isEmpty();
      if (keepable && other.target().room() > best.target().room()) {
        best = other;
      }
    }
    return best;
  }

  private Aim aim(double power) {
    double lnIntensity = DialSetting.on(bench, power, 10).lnIntensity();
    return IntStream.rangeClosed(1, mostPasses)
        .mapToObj(passes -> new Aim(power, outlook.target(lnIntensity, passes)))
        .max(Comparator.comparingDouble(aim -> aim.target().room()))
        .orElseThrow();
  }

  /** Passes to read: all, or on the piece as many as keep the char risk within what was asked. */
  private int passes(DialSetting s) {
    if (site != Site.PIECE) {
      return mostPasses;
    }
    int passes = 0;
    while (passes < mostPasses && riskUpper(s, passes + 1) <= asked.charRisk()) {
      passes++;
    }
    return passes;
  }

  private double riskUpper(DialSetting s, int passes) {
    return s.predicted(outlook.charFit(), passes).upper(asked.confidence());
  }

  private Draft draft(DialSetting s, int passes, Place place, Purpose purpose, Gain gain) {
    Settings settings = bench.settings(s.powerPercent(), s.speedMillimetresPerSecond());
    return new Draft(s, settings, passes, place, purpose, motive(purpose), gain);
  }

  private Motive motive(Purpose purpose) {
    return switch (purpose) {
      case CLIMB -> triedPowers.isEmpty() ? Motive.LOWEST_RUNG : Motive.NEXT_RUNG;
      case HOT_SIDE -> anyChar ? Motive.HOT_SIDE : Motive.ONSET;
      case COLD_SIDE -> Motive.COLD_SIDE;
      case CONTROL -> Motive.CONTROL;
      case CONFIRM -> Motive.CONFIRM;
      case TELL_APART -> throw new IllegalArgumentException("Pairs are chosen by PairPlan.");
    };
  }

  /** A control patch on a board; empty where it may not be burned. */
  Optional<Draft> control(Settings control, Place place) {
    Exposure exposure =
        Exposure.of(
            bench.rig().emission(),
            bench.rig().deliveredWatts(control.power(), control.pulses(), bench.at()),
            control);
    DialSetting s =
        new DialSetting(
            bench.percent(exposure.deliveredWatts()),
            bench.speed().speedFor(exposure.areaRate().squareCentimetresPerSecond()),
            Math.log(exposure.doseJoulesPerCm2()),
            Math.log(exposure.intensity()));
    int passes = passes(s);
    if (passes == 0 || !permits(s)) {
      return Optional.empty();
    }
    outlookTakes(s, passes, place);
    return Optional.of(
        new Draft(
            s, control, passes, place, Purpose.CONTROL, Motive.CONTROL, new Gain.SeesDrift()));
  }

  private void outlookTakes(DialSetting s, int passes, Place place) {
    take(
        s,
        outlook.charring().prospect(s.lnDose(), s.lnIntensity(), passes, place.id()),
        outlook.clearing().prospect(s.lnDose(), s.lnIntensity(), passes, place.id()));
  }

  /** The dose in the middle of the window hoped for, as a natural logarithm. */
  double lnAim() {
    return aim().target().lnMiddle();
  }

  private static Gain gain(Outlook.Target target, double hotAfter, double coldAfter) {
    double z = 1.2815515655446004; // 90 % of a normal, one-sided: what a limit is usually asked at
    return new Gain.Narrows(
        z * hotAfter, z * target.hotSpread(), z * coldAfter, z * target.coldSpread());
  }

  /** True if the trials or a patch earlier in a list permit a setting. */
  boolean permitted(DialSetting s, int known, List<Suggestion> before) {
    return byTrials(s, known) || licence(s, known, before).isPresent();
  }

  /**
   * Number of the patch in a list that permits a setting, empty where the trials do.
   *
   * @param known settings of the ladder that the trials gave
   */
  OptionalInt licence(DialSetting s, int known, List<Suggestion> before) {
    return byTrials(s, known)
        ? OptionalInt.empty()
        : before.stream()
            .filter(b -> Ladder.within(b.setting(), s))
            .mapToInt(Suggestion::number)
            .findFirst();
  }

  private boolean byTrials(DialSetting s, int known) {
    return ladder.permits(s.lnDose(), s.lnIntensity(), known);
  }
}
