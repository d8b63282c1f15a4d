package charline.window;

import charline.model.Evidence;
import charline.model.check.FitChecks;
import charline.model.check.FitFinding;
import charline.model.check.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Turns what was found into a verdict, its reasons and the next steps. */
record Findings(
    Evidence evidence,
    Requirements asked,
    RigSetup bench,
    TriedKnobs tried,
    SupportingPatches witnesses,
    FitChecks charChecks,
    FitChecks clearingChecks,
    double boardSpread,
    Optional<Box> box,
    boolean settled,
    Optional<PieceEvidence> piece,
    Shortfall shortfall,
    double chanceAnyWindow) {
  /**
   * A promise about a board not seen yet needs several that were (common practice: at least three
   * boards, no published source), and more than one patch on each.
   */
  private static final int FEWEST_BOARDS = 3;

  static final int FEWEST_PATCHES = 2 * FEWEST_BOARDS;

  /** On fewer patches a small chance of a window is no reason to give up yet. */
  static final int FEWEST_FOR_NONE = 12;

  /** Failing checks that a reason names; the models' own reports have them all. */
  private static final int MOST_NAMED = 3;

  /**
   * Fewer boards than this hardly measure how much boards differ (reports/validation.md): where
   * they are seen to differ by more than {@link #UNLIKE}, so many are asked for.
   */
  private static final int BOARDS_THAT_MEASURE = 5;

  /** Board spread in ln dose: one board in three is off by more than a factor of 1.22. */
  private static final double UNLIKE = 0.2;

  Verdict verdict() {
    if (charChecks.fail() || clearingChecks.fail()) {
      return Verdict.UNRELIABLE;
    }
    if (bench.linesApart()) {
      return Verdict.NOT_YET;
    }
    if (box.isPresent()) {
      return enough() && charredControls().isEmpty() ? Verdict.WINDOW : Verdict.NOT_YET;
    }
    // Where all trials were too hot to leave any finish, cooler ones may still find a window.
    boolean hopeless = witnesses.finishSeen() && chanceAnyWindow < WindowFinder.HOPELESS;
    return enough() && evidence.patches() >= FEWEST_FOR_NONE && hopeless
        ? Verdict.NONE
        : Verdict.NOT_YET;
  }

  private boolean enough() {
    return evidence.patches() >= FEWEST_PATCHES
        && (evidence.boards() >= FEWEST_BOARDS
            || piece.filter(p -> p.fits().patches() >= FEWEST_PATCHES).isPresent());
  }

  private List<String> charredControls() {
    return piece.map(p -> p.controls().charred()).orElse(List.of());
  }

  /** Boards that a window takes at least, where they are seen to differ by so much in ln dose. */
  static int boardsWanted(double boardSpread) {
    return boardSpread > UNLIKE ? BOARDS_THAT_MEASURE : FEWEST_BOARDS;
  }

  /** A window that is gone once its limits move as they still may is provisional. */
  Optional<Standing> standing() {
    if (verdict() != Verdict.WINDOW) {
      return Optional.empty();
    }
    if (controlsWanting() == 0) {
      return Optional.of(Standing.CONFIRMED);
    }
    return Optional.of(settled ? Standing.TO_CONFIRM : Standing.PROVISIONAL);
  }

  private int controlsWanting() {
    return piece.map(PieceEvidence::controls).orElse(PieceControls.NONE).wanting();
  }

  List<Reason> reasons() {
    return switch (verdict()) {
      case WINDOW -> window();
      case NONE -> List.of(new Reason.CharsWhereItClears(chanceAnyWindow));
      case NOT_YET -> notYet();
      case UNRELIABLE -> List.of(modelFails());
    };
  }

  List<NextStep> nextSteps() {
    return switch (verdict()) {
      case WINDOW -> confirm();
      case NONE -> List.of(new NextStep.UseAnotherMethod());
      case NOT_YET ->
          List.of(
              bench.linesApart()
                  ? new NextStep.CloserLines(spacing(), spot())
                  : charredControls().isEmpty()
                      ? new NextStep.BurnNextPatches()
                      : new NextStep.LookAtControls(charredControls()));
      case UNRELIABLE -> List.of(new NextStep.AmendOrSplit());
    };
  }

  private double spacing() {
    return bench.speed().acrossMillimetres();
  }

  private double spot() {
    return bench.spot().oneOverESquaredMillimetres();
  }

  private List<Reason> window() {
    List<Reason> parts = new ArrayList<>();
    parts.add(
        new Reason.PromisesKept(
            asked, box.orElseThrow().narrowFor(bench.speed()), piece.map(PieceEvidence::name)));
    boardsDiffer().ifPresent(parts::add);
    if (!settled && controlsWanting() > 0) {
      parts.add(new Reason.Provisional(WindowFinder.LIMITS_MOVE));
    }
    return parts;
  }

  /** A window that hangs on a patch the model doubts asks first for that patch to be looked at. */
  private List<NextStep> confirm() {
    List<NextStep> steps = new ArrayList<>();
    Stream.of(charChecks, clearingChecks)
        .flatMap(checks -> checks.doubtfulPatches().stream())
        .forEach(doubtful -> steps.add(new NextStep.CheckPatch(doubtful)));
    if (controlsWanting() > 0) {
      steps.add(new NextStep.ConfirmOnPiece(controlsWanting()));
    }
    return steps;
  }

  private List<Reason> notYet() {
    if (bench.linesApart()) {
      return List.of(new Reason.LinesApart(spacing(), spot()));
    }
    List<Reason> parts = new ArrayList<>();
    if (evidence.charredPatches() == 0) {
      parts.add(new Reason.NoPatchCharred());
    }
    if (evidence.clearedPatches() == 0) {
      parts.add(new Reason.NoPatchCleared());
    }
    if (!charredControls().isEmpty()) {
      parts.add(new Reason.ControlsCharred(charredControls()));
    }
    if (box.isEmpty()) {
      parts.addAll(shortOf());
    }
    if (box.isEmpty() && enough()) {
      parts.addAll(unwitnessed());
    }
    if (enough() && parts.isEmpty()) {
      parts.add(new Reason.TooNarrow());
    }
    if (!enough() && piece.isPresent()) {
      parts.add(new Reason.TooFewOnPiece(piece.get().fits().patches(), FEWEST_PATCHES));
    } else if (!enough()) {
      parts.add(
          new Reason.TooFewPatches(
              evidence.patches(), evidence.boards(), FEWEST_PATCHES, FEWEST_BOARDS));
    }
    return parts;
  }

  /** Said of any board where boards differ: patches on the piece itself then promise more. */
  private Optional<Reason> boardsDiffer() {
    return piece.isEmpty() && boardSpread > UNLIKE
        ? Optional.of(new Reason.BoardsDiffer(Math.exp(boardSpread)))
        : Optional.empty();
  }

  /** What the search for a box fell short of. */
  private List<Reason> shortOf() {
    List<Reason> parts = new ArrayList<>();
    if (!shortfall.anythingWithinReach()) {
      return List.of(new Reason.NothingTried());
    }
    Optional<Forecast> best = shortfall.best();
    if (best.isEmpty()) {
      parts.add(new Reason.EverySettingMayChar(asked, shortfall.clearsSomewhere()));
    } else if (best.get().clearChanceLower() < asked.clearChance()) {
      parts.add(new Reason.BestMayNotClear(best.get(), bench.speed().kind(), asked));
    }
    Optional<Range> speeds = tried.speeds(bench.speed().kind());
    if (shortfall.openAtOtherSpeeds() && speeds.isPresent()) {
      parts.add(new Reason.OnlyAtOtherSpeeds(bench.speed().kind(), speeds.get()));
    }
    boardsDiffer().ifPresent(parts::add);
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
    if (shortfall.openWithFewerUnharmed()) {
      parts.add(
          new Reason.TooFewCameThrough(
              witnesses.unharmedWanted(), witnesses.inSameWay(), evidence.patches()));
    }
    return parts;
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
