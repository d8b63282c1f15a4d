package charline.plan;

import charline.exposure.Exposure;
import charline.trial.Patch;
import charline.window.PredictedChance;
import charline.window.Requirements;
import charline.window.RigSetup;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The patches that show where one piece lies among boards: two at the start setting, or where a
 * window is most to be hoped for, and hotter ones until the piece is likely to brown. They go on a
 * place that will not be seen, coolest first.
 */
final class PiecePlan {
  /** Doses from that of the start setting; chosen by simulated shops (package description). */
  private static final List<Double> FACTORS = List.of(1.0, 1.0, 1.25, 1.55, 1.9);

  private static final int COOLER = 2;

  /** After every pass up to this one a patch is read, but never past the first brown. */
  static final int PASSES = 6;

  /** Nearer than half a rung, a patch burned already stands for one of the plan. */
  private static final double SAME = Ladder.LN_STEP / 2;

  private final RigSetup bench;
  private final Requirements asked;
  private final Outlook outlook;
  private final Ladder ladder;
  private final Place place;

  PiecePlan(RigSetup bench, Requirements asked, Outlook outlook, Ladder ladder, Place place) {
    this.bench = bench;
    this.asked = asked;
    this.outlook = outlook;
    this.ladder = ladder;
    this.place = place;
  }

  /**
   * Where most room between the two promises is to be hoped for at a power that was tried.
   *
   * @param patches burned so far
   */
  Optional<DialSetting> hope(List<Patch> patches) {
    Dial dial = new Dial(bench);
    return patches.stream()
        .map(p -> (double) Math.round(bench.powerForIntensity(p.exposure().intensity())))
        .filter(percent -> percent >= 1 && percent <= bench.highestPercent())
        .distinct()
        .flatMap(
            power ->
                IntStream.rangeClosed(1, PASSES)
                    .mapToObj(passes -> hope(dial, power, passes))
                    .flatMap(Optional::stream))
        .max(Comparator.comparingDouble(Hope::room))
        .map(Hope::setting);
  }

  private record Hope(DialSetting setting, double room) {}

  private Optional<Hope> hope(Dial dial, double power, int passes) {
    Outlook.Target target = outlook.target(DialSetting.on(bench, power, 10).lnIntensity(), passes);
    double middle = target.lnMiddle();
    return dial.settings(power, middle - Ladder.LN_STEP, middle).stream()
        .findFirst()
        .map(setting -> new Hope(setting, target.room()));
  }

  /**
   * The patches of the plan that were not burned yet, in the order of burning.
   *
   * @param start the setting that it begins at
   * @param own patches burned on the piece so far
   */
  List<Suggestion> list(DialSetting start, List<Patch> own) {
    List<Suggestion> list = new ArrayList<>();
    int known = ladder.size();
    while (!ladder.permits(start.lnDose(), start.lnIntensity())) {
      Optional<DialSetting> rung = new Climb(bench, ladder).rungTowards(start);
      if (rung.isEmpty() || list.size() > FACTORS.size()) {
        return list;
      }
      add(list, rung.get(), Purpose.CLIMB, Motive.CLIMB_TO_START, known);
    }
    List<Double> wanting = new ArrayList<>(FACTORS);
    own.forEach(
        patch ->
            wanting.stream()
                .filter(f -> burned(patch, start, f))
                .findFirst()
                .ifPresent(wanting::remove));
    for (double factor : wanting) {
      Optional<DialSetting> setting = hotter(start, factor);
      if (setting.isEmpty()
          || !ladder.permits(setting.get().lnDose(), setting.get().lnIntensity())) {
        break;
      }
      boolean first = factor == 1;
      add(
          list,
          setting.get(),
          first ? Purpose.CONFIRM : Purpose.HOT_SIDE,
          first ? Motive.PIECE_AT_START : Motive.PIECE_HOTTER,
          known);
    }
    return list;
  }

  /**
   * Patches a rung cooler than the coolest control that charred.
   *
   * @param charred controls on the piece that charred, one or more
   */
  List<Suggestion> cooler(List<Patch> charred) {
    Exposure coolest =
        charred.stream()
            .map(Patch::exposure)
            .min(Comparator.comparingDouble(Exposure::doseJoulesPerCm2))
            .orElseThrow();
    double power = Math.round(bench.powerForIntensity(coolest.intensity()));
    double lnDose = Math.log(coolest.doseJoulesPerCm2()) - Ladder.LN_STEP;
    List<Suggestion> list = new ArrayList<>();
    new Dial(bench)
        .settings(power, lnDose - Ladder.LN_STEP, lnDose).stream()
            .findFirst()
            .ifPresent(
                setting -> {
                  int known = ladder.size();
                  for (int k = 0; k < COOLER; k++) {
                    add(list, setting, Purpose.CONFIRM, Motive.COOLER, known);
                  }
                });
    return list;
  }

  private static boolean burned(Patch patch, DialSetting start, double factor) {
    double lnDose = Math.log(patch.exposure().doseJoulesPerCm2());
    double lnIntensity = Math.log(patch.exposure().intensity());
    return Math.abs(lnDose - start.lnDose() - Math.log(factor)) < SAME
        && Math.abs(lnIntensity - start.lnIntensity()) < SAME;
  }

  /** So much more dose by a slower hand, or by more power where the hand would be too slow. */
  private Optional<DialSetting> hotter(DialSetting start, double factor) {
    if (factor == 1) {
      return Optional.of(start);
    }
    Dial dial = new Dial(bench);
    double lnDose = start.lnDose() + Math.log(factor);
    return dial.powers(List.of(start.powerPercent())).stream()
        .filter(power -> power >= start.powerPercent())
        .flatMap(power -> dial.settings(power, lnDose - SAME, lnDose).stream())
        .findFirst();
  }

  private void add(
      List<Suggestion> list, DialSetting s, Purpose purpose, Motive motive, int known) {
    PredictedChance risk = s.predicted(outlook.charFit(), PASSES);
    PredictedChance clear = s.predicted(outlook.clearingFit(), PASSES);
    OptionalInt onlyAfter =
        ladder.permits(s.lnDose(), s.lnIntensity(), known)
            ? OptionalInt.empty()
            : list.stream()
                .filter(before -> Ladder.within(before.setting(), s))
                .mapToInt(Suggestion::number)
                .max();
    list.add(
        new Suggestion(
            list.size() + 1,
            purpose,
            motive,
            place,
            s,
            bench.settings(s.powerPercent(), s.speedMillimetresPerSecond()),
            PASSES,
            risk.mean(),
            risk.upper(asked.confidence()),
            clear.mean(),
            new Gain.PlacesPiece(),
            onlyAfter));
    ladder.add(s.lnDose(), s.lnIntensity());
  }

  /** Patches to expect brown by their last pass, each risk averaged over the posterior. */
  static double expectedBrown(List<Suggestion> list) {
    return list.stream().mapToDouble(Suggestion::charRiskMean).sum();
  }
}
