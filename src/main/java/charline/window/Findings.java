package charline.window;

import charline.model.Evidence;
import charline.model.check.FitChecks;
import charline.model.check.FitFinding;
import charline.model.check.Severity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Turns what was found into a verdict, its reasons and the next steps. */
record Findings(
    Evidence evidence,
    Requirements asked,
    RigSetup bench,
    TriedRegion reach,
    SupportingPatches witnesses,
    FitChecks charChecks,
    FitChecks clearingChecks,
    double boardSpread,
    Optional<Box> box,
    Optional<Forecast> bestHope,
    double chanceAnyWindow) {
  /** From one rung of the ladder to the next: a quarter more dose. */
  private static final double STEP = 1.25;

  /**
   * A promise about a board not seen yet needs several that were (common practice: at least three
   * boards, no published source), and more than one patch on each.
   */
  private static final int FEWEST_BOARDS = 3;

  static final int FEWEST_PATCHES = 2 * FEWEST_BOARDS;

  /** Failing checks that a reason names; the models' own reports have them all. */
  private static final int MOST_NAMED = 3;

  /**
   * Fewer boards than this do not measure how much boards differ: where they are seen to differ by
   * more than {@link #UNLIKE}, the spread may as well be twice what they show. This and the next
   * two numbers were chosen by simulated shops (reports/validation.md).
   */
  private static final int BOARDS_THAT_MEASURE = 5;

  /** Board spread in ln dose: one board in three is off by more than a factor of 1.22. */
  private static final double UNLIKE = 0.2;

  /** More than a factor of 1.35: beyond what is promised on, however many boards there are. */
  private static final double FAR_UNLIKE = 0.3;

  Verdict verdict() {
    if (charChecks.fail() || clearingChecks.fail()) {
      return Verdict.UNRELIABLE;
    }
    if (box.isPresent()) {
      return enough() && !unlikeBoards() ? Verdict.WINDOW : Verdict.NOT_YET;
    }
    // Where all trials were too hot to leave any finish, cooler ones may still find a window.
    boolean hopeless = witnesses.finishSeen() && chanceAnyWindow < WindowFinder.HOPELESS;
    return enough() && hopeless ? Verdict.NONE : Verdict.NOT_YET;
  }

  private boolean enough() {
    return evidence.boards() >= FEWEST_BOARDS && evidence.patches() >= FEWEST_PATCHES;
  }

  /** Boards that a window takes at least, where they are seen to differ by so much in ln dose. */
  static int boardsWanted(double boardSpread) {
    return boardSpread > UNLIKE ? BOARDS_THAT_MEASURE : FEWEST_BOARDS;
  }

  private boolean unlikeBoards() {
    return boardSpread > (evidence.boards() < BOARDS_THAT_MEASURE ? UNLIKE : FAR_UNLIKE);
  }

  List<Reason> reasons() {
    return switch (verdict()) {
      case WINDOW ->
          List.of(new Reason.PromisesKept(asked, box.orElseThrow().narrowFor(bench.speed())));
      case NONE -> List.of(new Reason.CharsWhereItClears(chanceAnyWindow));
      case NOT_YET -> notYet();
      case UNRELIABLE -> List.of(modelFails());
    };
  }

  List<NextStep> nextSteps() {
    return switch (verdict()) {
      case WINDOW -> confirm();
      case NONE -> List.of(new NextStep.UseAnotherMethod());
      case NOT_YET -> List.of(burn());
      case UNRELIABLE -> List.of(new NextStep.AmendOrSplit());
    };
  }

  /** A window that hangs on a patch the model doubts asks first for that patch to be looked at. */
  private List<NextStep> confirm() {
    List<NextStep> steps = new ArrayList<>();
    Stream.of(charChecks, clearingChecks)
        .flatMap(checks -> checks.doubtfulPatches().stream())
        .forEach(doubtful -> steps.add(new NextStep.CheckPatch(doubtful)));
    steps.add(new NextStep.ConfirmOnPiece());
    return steps;
  }

  private List<Reason> notYet() {
    List<Reason> parts = new ArrayList<>();
    if (evidence.charredPatches() == 0) {
      parts.add(new Reason.NoPatchCharred());
    }
    if (evidence.clearedPatches() == 0) {
      parts.add(new Reason.NoPatchCleared());
    }
    if (bestHope.isEmpty()) {
      parts.add(new Reason.NothingTried());
    } else if (box.isEmpty()) {
      parts.add(new Reason.BestSettingBreaks(bestHope.get(), bench.speed().kind(), asked));
    }
    if (box.isEmpty() && enough()) {
      parts.addAll(unwitnessed());
    }
    if (!enough()) {
      parts.add(
          new Reason.TooFewPatches(
              evidence.patches(), evidence.boards(), FEWEST_PATCHES, FEWEST_BOARDS));
    }
    if (enough() && unlikeBoards()) {
      parts.add(
          new Reason.BoardsDiffer(
              Math.exp(boardSpread),
              evidence.boards(),
              evidence.boards() < BOARDS_THAT_MEASURE
                  ? OptionalInt.of(BOARDS_THAT_MEASURE)
                  : OptionalInt.empty()));
    }
    return parts;
  }

  /** Why a setting that keeps both promises by the models may still be in no window. */
  private List<Reason> unwitnessed() {
    List<Reason> parts = new ArrayList<>();
    if (!witnesses.charSeen()) {
      parts.add(new Reason.CharNotSeen(SupportingPatches.FEWEST));
    }
    if (!witnesses.finishSeen()) {
      parts.add(
          new Reason.FinishNotSeen(SupportingPatches.FEWEST_UNCLEARED, SupportingPatches.FEWEST));
    }
    return parts;
  }

  private NextStep burn() {
    if (bestHope.isEmpty()) {
      return new NextStep.ClimbFromLowest();
    }
    Forecast hope = bestHope.get();
    double ceiling = Math.exp(reach.lnHighestUncharredDose()) * STEP;
    List<Double> speeds =
        Stream.of(1 / STEP, 1.0, STEP)
            .map(f -> hope.speedMillimetresPerSecond() * f)
            .filter(u -> bench.exposure(hope.powerPercent(), u).doseJoulesPerCm2() <= ceiling)
            .sorted(Comparator.reverseOrder())
            .toList();
    return speeds.isEmpty()
        ? new NextStep.GoCooler()
        : new NextStep.BurnPatches(
            hope.powerPercent(), bench.speed().kind(), speeds, Math.max(hope.passes(), 2) + 1);
  }

  private Reason modelFails() {
    List<FitFinding> failing =
        Stream.of(charChecks, clearingChecks)
            .flatMap(checks -> checks.findings(Severity.FAILS).stream())
            .toList();
    int named = Math.min(MOST_NAMED, failing.size());
    return new Reason.ModelFails(failing.subList(0, named), failing.size() - named);
  }
}
