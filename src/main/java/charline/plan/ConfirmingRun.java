package charline.plan;

import charline.model.CensoredPasses;
import charline.model.Event;
import charline.model.Trials;
import charline.window.Box;
import charline.window.PredictedChance;
import charline.window.Recommendation;
import charline.window.RigSetup;
import java.util.Optional;
import java.util.OptionalInt;

/** Repeats of the start setting of a window that stands. */
public final class ConfirmingRun {
  /** Settings are the same where they differ by less than a hand can tell. */
  private static final double SAME = 0.03;

  private final Recommendation found;
  private final RigSetup bench;
  private final Box box;
  private final Outlook outlook;
  private final Ladder ladder;
  private Optional<Suggestion> climbedTo = Optional.empty();

  /**
   * @param ladder where it does not permit the start setting, the first patches climb to that from
   *     below
   */
  ConfirmingRun(Recommendation found, Outlook outlook, Ladder ladder) {
    this.found = found;
    this.outlook = outlook;
    this.ladder = ladder;
    bench = found.bench();
    box = found.chosen().orElseThrow();
  }

  /** The next patch on a board; empty where no setting on the way to the start may be burned. */
  Optional<Suggestion> next(int number, Place place, int known) {
    DialSetting start =
        DialSetting.on(bench, box.start().powerPercent(), box.start().speedMillimetresPerSecond());
    if (ladder.permits(start.lnDose(), start.lnIntensity())) {
      return Optional.of(suggestion(number, place, start, Purpose.CONFIRM, Motive.CONFIRM, known));
    }
    Optional<DialSetting> rung = new Climb(bench, ladder).rungTowards(start);
    return rung.map(
        s -> {
          Suggestion climb =
              suggestion(number, place, s, Purpose.CLIMB, Motive.CLIMB_TO_START, known);
          ladder.add(s.lnDose(), s.lnIntensity());
          climbedTo = Optional.of(climb);
          return climb;
        });
  }

  private Suggestion suggestion(
      int number, Place place, DialSetting s, Purpose purpose, Motive motive, int known) {
    PredictedChance risk = s.predicted(outlook.charFit(), box.passes());
    PredictedChance clear = s.predicted(outlook.clearingFit(), box.passes());
    boolean byTrials = ladder.permits(s.lnDose(), s.lnIntensity(), known);
    return new Suggestion(
        number,
        purpose,
        motive,
        place,
        s,
        bench.settings(s.powerPercent(), s.speedMillimetresPerSecond()),
        box.passes(),
        risk.mean(),
        risk.upper(found.asked().confidence()),
        clear.mean(),
        new Gain.LongerRun(),
        byTrials || climbedTo.isEmpty()
            ? OptionalInt.empty()
            : OptionalInt.of(climbedTo.get().number()));
  }

  /**
   * The patches burned at the start setting so far, on any rig, by its passes. One that charred
   * between a reading before those passes and one after them counts as charred by them.
   */
  CleanRun run(Trials trials) {
    double lnDose = Math.log(box.start().doseJoulesPerCm2());
    double lnIntensity = Math.log(box.start().intensity());
    int bad = 0;
    int all = 0;
    for (CensoredPasses patch : trials.censored(Event.CHAR)) {
      boolean same =
          Math.abs(patch.lnDose() - lnDose) < SAME
              && Math.abs(patch.lnIntensity() - lnIntensity) < SAME;
      boolean unharmed = patch.passesWithout() >= box.passes();
      if (same && (unharmed || patch.seen())) {
        all++;
        bad += unharmed ? 0 : 1;
      }
    }
    return new CleanRun(bad, all);
  }
}
