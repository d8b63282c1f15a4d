package charline.wording;

import charline.quantity.Figures;
import charline.window.Forecast;
import charline.window.Reason;
import charline.window.Recommendation;
import charline.window.SpeedKnob;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Why a verdict is what it is, in sentences. */
public final class ReasonText {
  private ReasonText() {}

  /** All reasons of an answer. */
  public static String of(Recommendation found) {
    return of(found.reasons());
  }

  /** Several reasons, in their order. */
  public static String of(List<Reason> reasons) {
    return reasons.stream().map(ReasonText::of).collect(Collectors.joining(" "));
  }

  private static String of(Reason reason) {
    if (reason instanceof Reason.PromisesKept kept) {
      return kept(kept);
    }
    if (reason instanceof Reason.CharsWhereItClears chars) {
      return "Where the finish comes off, the wood chars: the chance that any setting keeps both promises is %s, given these trials."
          .formatted(Figures.percent(chars.chanceAnyWindow()));
    }
    if (reason instanceof Reason.NoPatchCharred) {
      return "No patch charred, so the trials give only a lower limit for where the wood begins to"
          + " burn.";
    }
    if (reason instanceof Reason.NoPatchCleared) {
      return "No patch cleared, so the trials do not show yet what removes this finish.";
    }
    if (reason instanceof Reason.NothingTried) {
      return "No setting of this rig lies within what was tried.";
    }
    if (reason instanceof Reason.BestSettingBreaks breaks) {
      return breaks(breaks);
    }
    if (reason instanceof Reason.CharNotSeen unseen) {
      return "Until a patch has charred, a window includes only settings that at least %d unharmed patches support, each at least as hot in every respect."
          .formatted(unseen.unharmed());
    }
    if (reason instanceof Reason.FinishNotSeen unseen) {
      return "Until %d patches have kept finish, a window includes only settings that at least %d cleared patches support, each at most as hot in every respect."
          .formatted(unseen.uncleared(), unseen.cleared());
    }
    if (reason instanceof Reason.TooFewPatches few) {
      return "%s on %s %s not enough: a promise about a board not seen yet takes at least %d patches on %d boards."
          .formatted(
              Figures.patches(few.patches()),
              Figures.boards(few.boards()),
              few.patches() == 1 ? "is" : "are",
              few.patchesNeeded(),
              few.boardsNeeded());
    }
    if (reason instanceof Reason.BoardsDiffer differ) {
      return differ(differ);
    }
    return fails((Reason.ModelFails) reason);
  }

  private static String kept(Reason.PromisesKept kept) {
    String promise =
        "Everywhere in these ranges char risk stays at or below %s and clearing chance at or above %s, each with %s confidence, on a board not seen yet."
            .formatted(
                Figures.share(kept.asked().charRisk()),
                Figures.share(kept.asked().clearChance()),
                Figures.share(kept.asked().confidence()));
    return kept.narrow()
        ? promise
            + " The range of hand speed is narrower than a steady hand can keep; more patches on"
            + " more boards would widen it."
        : promise;
  }

  private static String breaks(Reason.BestSettingBreaks breaks) {
    Forecast best = breaks.best();
    return "The best setting so far, %s, may char as many as %s of patches (asked: at most %s) and may clear as few as %s (asked: at least %s)."
        .formatted(
            setting(best, breaks.speed()),
            Figures.atMost(best.charRiskUpper()),
            Figures.share(breaks.asked().charRisk()),
            Figures.atLeast(best.clearChanceLower()),
            Figures.share(breaks.asked().clearChance()));
  }

  private static String setting(Forecast f, SpeedKnob.Kind speed) {
    return "%s %%, %s %s mm/s, %s"
        .formatted(
            Figures.three(f.powerPercent()),
            speed.words(),
            Figures.three(f.speedMillimetresPerSecond()),
            Figures.passes(f.passes()));
  }

  private static String differ(Reason.BoardsDiffer differ) {
    String these =
        "These boards differ: one in three is off the average by more than a factor of %s"
            .formatted(Figures.three(differ.factor()));
    return differ.boardsNeeded().isPresent()
        ? these
            + ", and %d boards are too few for a promise about another; it takes at least %d."
                .formatted(differ.boards(), differ.boardsNeeded().getAsInt())
        : these
            + ", too much for a promise about another; sort them (heartwood, grain, age,"
            + " moisture).";
  }

  private static String fails(Reason.ModelFails fails) {
    List<String> sentences = new ArrayList<>();
    fails.failing().forEach(finding -> sentences.add(FindingText.of(finding)));
    if (fails.more() > 0) {
      sentences.add(
          "And %s.".formatted(Figures.count(fails.more(), "more finding", "more findings")));
    }
    return String.join(" ", sentences);
  }
}
