package charline.wording;

import charline.log.PlannedPatch;
import charline.plan.Advice;
import charline.plan.CleanRun;
import charline.plan.Gain;
import charline.plan.Motive;
import charline.plan.Progress;
import charline.plan.Site;
import charline.quantity.Figures;

/** Which patches to burn next and why, in words. */
public final class PlanText {
  private static final String IN_ORDER =
      "Burn them in this order and judge each cold and wiped after every pass. At the first brown"
          + " stop that patch, skip every patch that depends on it, and ask again.";

  private PlanText() {}

  /** Where things are, in a sentence. */
  public static String standing(Progress standing) {
    if (standing instanceof Progress.NothingBurned) {
      return "Nothing has been burned yet, so do not burn on the piece.";
    }
    if (standing instanceof Progress.FirstLadder) {
      return "Nothing has been burned yet: the ladder begins at a dose that is safe by the priors.";
    }
    if (standing instanceof Progress.AsFound found) {
      return ReasonText.of(found.reasons());
    }
    if (standing instanceof Progress.ToPlacePiece place) {
      return "These patches show where %s lies among your boards.".formatted(place.board());
    }
    return "There is a window; these patches confirm its start setting%s."
        .formatted(with((Progress.ToConfirm) standing));
  }

  private static String with(Progress.ToConfirm standing) {
    return (standing.newRig() ? " on a rig that has burned none of the trials" : "")
        + (standing.untried().isEmpty() ? "" : " with " + UntriedText.of(standing.untried()));
  }

  /** Where patches are to be burned. */
  public static String site(Site site) {
    return switch (site) {
      case OFFCUT -> "an offcut";
      case PIECE -> "the piece";
      case HIDDEN -> "a hidden place of the piece";
    };
  }

  /** How to go on, in a sentence or two. */
  public static String advice(Advice advice) {
    if (advice instanceof Advice.BeginOnOffcut) {
      return "Begin on an offcut with the same wood and the same coats, or on another hidden spot"
          + " that may char.";
    }
    if (advice instanceof Advice.InOrder) {
      return IN_ORDER;
    }
    if (advice instanceof Advice.DownUntilUnharmed) {
      return "Every patch so far charred, so go down: burn these in this order, each a quarter"
          + " cooler than the one before, and judge each cold and wiped. When one comes"
          + " through its first pass without char, stop and ask again.";
    }
    if (advice instanceof Advice.AsFound found) {
      String steps = NextStepText.of(found.steps());
      return found.thenInOrder() ? steps + " " + IN_ORDER : steps;
    }
    if (advice instanceof Advice.NothingAllowed nothing) {
      return nothing.site() == Site.PIECE
          ? "So far no setting keeps the char risk of a patch on the piece within your limit; burn"
              + " on an offcut first."
          : "This rig has no setting that continues from what was burned without char; burn cooler"
              + " patches first.";
    }
    if (advice instanceof Advice.OnHiddenPlace place) {
      return "Burn them on a place of %s that will not be seen: its back, its underside or behind hardware. Coolest first; judge each cold and wiped after every pass, up to its first brown. Expect about %s of %s to brown. Then ask again."
          .formatted(
              place.board(),
              Figures.three(place.expectedBrown()),
              Figures.patches(place.patches()));
    }
    if (advice instanceof Advice.PieceConfirmed confirmed) {
      return "Enough control patches on %s came out clean: nothing more need be burned there."
          .formatted(confirmed.board());
    }
    return repeat((Advice.Repeat) advice);
  }

  /** What the run so far says without a model, and how long a clean one it takes. */
  private static String repeat(Advice.Repeat repeat) {
    CleanRun run = repeat.run();
    double confidence = repeat.asked().confidence();
    String counted =
        run.patches() == 0
            ? "No patch has been burned at the start setting itself yet."
            : "At the start setting %s of %s charred by %s: without any model, that supports a char risk of at most %s."
                .formatted(
                    run.bad() == 0 ? "none" : String.valueOf(run.bad()),
                    Figures.patches(run.patches()),
                    Figures.passes(repeat.passes()),
                    Figures.atMost(run.upperRisk(confidence)));
    return NextStepText.of(repeat.steps())
        + " "
        + counted
        + " It takes %d in a row without char to support %s at %s confidence by counting alone (exact binomial, one-sided), %d at 95 %%."
            .formatted(
                CleanRun.needed(repeat.asked().charRisk(), confidence),
                Figures.share(repeat.asked().charRisk()),
                Figures.share(confidence),
                CleanRun.needed(repeat.asked().charRisk(), 0.95));
  }

  /** "40 %, hand 30 mm/s, figure circle": what is dialled for a planned patch. */
  public static String settings(PlannedPatch plan) {
    return SettingsText.settings(plan.settings())
        + plan.figure().map(figure -> ", figure " + figure.word()).orElse("");
  }

  /** Why a patch is to be burned, in a few words. */
  public static String motive(Motive motive) {
    return switch (motive) {
      case LOWEST_RUNG -> "lowest rung";
      case NEXT_RUNG -> "next rung up, to bracket the onset";
      case HOT_SIDE -> "narrows the hot side";
      case ONSET -> "brackets the onset of char";
      case COLD_SIDE -> "narrows the cold side";
      case COOLER -> "goes down to what leaves the wood unharmed";
      case CONTROL -> "control patch: has the rig drifted?";
      case CONFIRM -> "confirms the start setting";
      case CLIMB_TO_START -> "climbs to the start setting";
      case PIECE_AT_START -> "shows what the start setting does on this piece";
      case PIECE_HOTTER -> "shows where this piece begins to char";
    };
  }

  /** What a patch is expected to do to the window, in a few words. */
  public static String gain(Gain gain) {
    if (gain instanceof Gain.Narrows narrows) {
      return "hot limit uncertain by %s instead of %s, cold limit by %s instead of %s"
          .formatted(
              Figures.within(narrows.hotAfter()),
              Figures.within(narrows.hotNow()),
              Figures.within(narrows.coldAfter()),
              Figures.within(narrows.coldNow()));
    }
    if (gain instanceof Gain.LowestRung) {
      return "shows what the lowest rung does";
    }
    if (gain instanceof Gain.PlacesPiece) {
      return "shows how far this piece lies from the average board";
    }
    return gain instanceof Gain.LongerRun
        ? "adds one patch to the run that needs no model"
        : "shows whether the rig itself has changed";
  }
}
