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
    if (reason instanceof Reason.BestMayNotClear best) {
      return mayNotClear(best);
    }
    if (reason instanceof Reason.EverySettingMayChar every) {
      return everySetting(every);
    }
    if (reason instanceof Reason.TooNarrow) {
      return "The speeds that keep both limits lie closer together than a speed can be read.";
    }
    if (reason instanceof Reason.OnlyAtOtherSpeeds other) {
      return "A window would need a %s outside %s mm/s, the range of the trials."
          .formatted(
              other.speed().words(), Figures.inward(other.tried().low(), other.tried().high()));
    }
    if (reason instanceof Reason.LinesApart apart) {
      return StripesText.of(apart.spacingMillimetres(), apart.spotMillimetres());
    }
    if (reason instanceof Reason.Provisional provisional) {
      return "The window is provisional: more patches may still move its limits by %s %%, and then it would be gone."
          .formatted(Math.round(100 * Math.expm1(provisional.lnMove())));
    }
    if (reason instanceof Reason.CharNotSeen unseen) {
      return "Until a patch has charred, a window includes only settings that at least %d unharmed patches support, each at least as hot in every respect."
          .formatted(unseen.unharmed());
    }
    if (reason instanceof Reason.FinishNotSeen unseen) {
      return "Until %d patches have kept finish, a window includes only settings that at least %d cleared patches support, each at most as hot in every respect."
          .formatted(unseen.uncleared(), unseen.cleared());
    }
    if (reason instanceof Reason.TooFewCameThrough few) {
      return "The models alone promise a window: fewer than %d of the %s came through its settings without char."
          .formatted(few.unharmed(), burned(few));
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
    if (reason instanceof Reason.ControlsCharred controls) {
      return "%s charred on the piece inside the ranges that these patches would give, which takes the window back."
          .formatted(String.join(", ", controls.patches()));
    }
    if (reason instanceof Reason.TooFewOnPiece few) {
      return "%s on the piece %s not enough by %s: with fewer than three boards tried, a window takes at least %d on the piece."
          .formatted(
              Figures.patches(few.patches()),
              few.patches() == 1 ? "is" : "are",
              few.patches() == 1 ? "itself" : "themselves",
              few.needed());
    }
    return fails((Reason.ModelFails) reason);
  }

  private static String burned(Reason.TooFewCameThrough few) {
    return few.burned() == few.all()
        ? Figures.patches(few.all())
        : Figures.patches(few.burned())
            + " burned this way (the same rig, figure, place, rest and wetting)";
  }

  private static String kept(Reason.PromisesKept kept) {
    String promise =
        "Everywhere in these ranges char risk stays at or below %s and clearing chance at or above %s, each with %s confidence, on %s."
            .formatted(
                Figures.share(kept.asked().charRisk()),
                Figures.share(kept.asked().clearChance()),
                Figures.share(kept.asked().confidence()),
                kept.piece().orElse("a board not seen yet"));
    return kept.narrow()
        ? promise
            + " The range of hand speed is narrower than a steady hand can keep; more patches on"
            + (kept.piece().isPresent()
                ? " the piece would widen it."
                : " more boards would widen it.")
        : promise;
  }

  private static String mayNotClear(Reason.BestMayNotClear may) {
    Forecast best = may.best();
    return "The best setting so far that keeps the char limit, %s, may clear as few as %s of patches (asked: at least %s)."
        .formatted(
            setting(best, may.speed()),
            Figures.atLeast(best.clearChanceLower()),
            Figures.share(may.asked().clearChance()));
  }

  private static String everySetting(Reason.EverySettingMayChar every) {
    String limit = Figures.share(every.asked().charRisk());
    return every.clears()
        ? "Every setting within what was tried may char more than %s of patches, so there is no best setting yet."
            .formatted(limit)
        : "No setting within what was tried keeps either limit (char at most %s, clearing at least %s), so there is no best setting yet."
            .formatted(limit, Figures.share(every.asked().clearChance()));
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
    return "These boards differ: one in three is off the average by more than a factor of %s. Patches on the piece itself promise more than other boards can."
        .formatted(Figures.three(differ.factor()));
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
