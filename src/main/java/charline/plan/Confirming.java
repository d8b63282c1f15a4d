package charline.plan;

import charline.model.CensoredPasses;
import charline.model.Event;
import charline.model.Trials;
import charline.quantity.Figures;
import charline.window.Asked;
import charline.window.Bench;
import charline.window.Box;
import charline.window.Predicted;
import charline.window.Recommendation;
import java.util.Optional;
import java.util.OptionalInt;

/** Repeats of the start setting of a window that stands. */
public final class Confirming {
  /** Settings are the same where they differ by less than a hand can tell. */
  private static final double SAME = 0.03;

  private final Recommendation found;
  private final Bench bench;
  private final Box box;
  private final Outlook outlook;
  private final Ladder ladder;
  private final boolean untried;
  private Optional<Suggestion> climbedTo = Optional.empty();

  /**
   * @param untried true where the rig has burned none of the trials: then the first patches climb
   *     to the start setting from below
   */
  Confirming(Recommendation found, Outlook outlook, Ladder ladder, boolean untried) {
    this.found = found;
    this.outlook = outlook;
    this.ladder = ladder;
    this.untried = untried;
    bench = found.bench();
    box = found.chosen().orElseThrow();
  }

  /** The next patch on a board; empty where no setting on the way to the start may be burned. */
  Optional<Suggestion> next(int number, Place place, int known) {
    Setting start =
        Setting.on(bench, box.start().powerPercent(), box.start().speedMillimetresPerSecond());
    if (ladder.permits(start.lnDose(), start.lnIntensity())) {
      return Optional.of(
          suggestion(number, place, start, Purpose.CONFIRM, "confirms the start setting", known));
    }
    if (!untried) {
      return Optional.empty();
    }
    Optional<Setting> rung = rungTowards(start);
    return rung.map(
        s -> {
          Suggestion climb =
              suggestion(
                  number,
                  place,
                  s,
                  Purpose.CLIMB,
                  "climbs to the start setting on this rig",
                  known);
          ladder.add(s.lnDose(), s.lnIntensity());
          climbedTo = Optional.of(climb);
          return climb;
        });
  }

  private Optional<Setting> rungTowards(Setting start) {
    Setting best = null;
    for (Setting s :
        new Dial(bench).settings(start.powerPercent(), start.lnDose() - 2, start.lnDose())) {
      if (ladder.permitsDose(s.lnDose()) && (best == null || s.lnDose() > best.lnDose())) {
        best = s;
      }
    }
    return Optional.ofNullable(best);
  }

  private Suggestion suggestion(
      int number, Place place, Setting s, Purpose purpose, String reason, int known) {
    Predicted risk = s.predicted(outlook.charFit(), box.passes());
    Predicted clear = s.predicted(outlook.clearingFit(), box.passes());
    boolean byTrials = ladder.permits(s.lnDose(), s.lnIntensity(), known);
    return new Suggestion(
        number,
        purpose,
        reason,
        place,
        s,
        bench.settings(s.powerPercent(), s.speedMillimetresPerSecond()),
        box.passes(),
        risk.mean(),
        risk.upper(found.asked().confidence()),
        clear.mean(),
        "adds one patch to the run that needs no model",
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

  /** What the run so far says without a model, and how long a clean one it takes. */
  static String advice(CleanRun run, Asked asked, int passes) {
    String counted =
        run.patches() == 0
            ? "No patch was burned at the start setting itself yet."
            : "At the start setting %s of %s charred by %s: without any model that supports a char risk of at most %s."
                .formatted(
                    run.bad() == 0 ? "none" : String.valueOf(run.bad()),
                    Figures.count(run.patches(), "patch", "patches"),
                    Figures.count(passes, "pass", "passes"),
                    Figures.percent(run.upperRisk(asked.confidence())));
    return "Judge each cold and wiped; at the first brown stop and ask again. "
        + counted
        + " It takes %d without char in a row to support %s at %s confidence by counting alone (exact binomial, one-sided), %d at 95 %%."
            .formatted(
                CleanRun.needed(asked.charRisk(), asked.confidence()),
                Figures.percent(asked.charRisk()),
                Figures.percent(asked.confidence()),
                CleanRun.needed(asked.charRisk(), 0.95));
  }
}
