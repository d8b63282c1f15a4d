package charline.window;

import charline.model.Evidence;
import charline.model.check.FitChecks;
import charline.model.check.Severity;
import charline.quantity.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Turns what was found into a verdict, a reason and a next step in plain words. */
record Findings(
    Evidence evidence,
    Asked asked,
    Bench bench,
    Reach reach,
    Witnesses witnesses,
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
  private static final int MOST_TOLD = 3;

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

  String reason() {
    return switch (verdict()) {
      case WINDOW -> windowReason(box.orElseThrow());
      case NONE ->
          "Where the finish comes off, the wood chars: the chance that any setting keeps both promises is %s on these trials."
              .formatted(Figures.percent(chanceAnyWindow));
      case NOT_YET -> notYetReason();
      case UNRELIABLE -> unreliableReason();
    };
  }

  private String windowReason(Box found) {
    String promise =
        "Everywhere in these ranges char risk stays at or below %s and clearing chance at or above %s, each with %s confidence, on a board not seen yet."
            .formatted(
                Figures.share(asked.charRisk()),
                Figures.share(asked.clearChance()),
                Figures.share(asked.confidence()));
    return found.narrowFor(bench.speed())
        ? promise
            + " The range of hand speed is narrower than a steady hand keeps to; more patches on"
            + " more boards would widen it."
        : promise;
  }

  String nextStep() {
    return switch (verdict()) {
      case WINDOW ->
          doubtfulPatches()
              + "Before the piece itself: three patches at the start setting on a hidden spot of"
              + " it, judged cold and wiped; stop at the first brown.";
      case NONE ->
          "Use another method for this finish on this wood. Another pulse length, spot or"
              + " wavelength would be a new set of trials, from the lowest rung.";
      case NOT_YET -> notYetStep();
      case UNRELIABLE ->
          "Look through these patches for a mistyped setting or a wrong outcome and amend it; if"
              + " all are right, split what differs (wood, coats, rig state) into strata of their"
              + " own.";
    };
  }

  /** A window that stands on a patch the model doubts asks first for that patch to be looked at. */
  private String doubtfulPatches() {
    return Stream.of(charChecks, clearingChecks)
        .flatMap(checks -> checks.doubtfulPatches().stream())
        .map(words -> "Look at this patch first: " + words + " ")
        .collect(Collectors.joining());
  }

  private String notYetReason() {
    List<String> parts = new ArrayList<>();
    if (evidence.charredPatches() == 0) {
      parts.add("No patch charred, so where the wood begins to burn is known from below only.");
    }
    if (evidence.clearedPatches() == 0) {
      parts.add("No patch cleared, so what lifts this finish is not known yet.");
    }
    if (bestHope.isEmpty()) {
      parts.add("Nothing that this rig can dial lies inside what was tried.");
    } else if (box.isEmpty()) {
      parts.add(hopeWords(bestHope.get()));
    }
    if (box.isEmpty() && enough()) {
      parts.addAll(unborneWords());
    }
    if (!enough()) {
      parts.add(
          "%s on %s %s too little: a promise about a board not seen yet takes at least %d patches on %d boards."
              .formatted(
                  Figures.count(evidence.patches(), "patch", "patches"),
                  Figures.count(evidence.boards(), "board", "boards"),
                  evidence.patches() == 1 ? "is" : "are",
                  FEWEST_PATCHES,
                  FEWEST_BOARDS));
    }
    if (enough() && unlikeBoards()) {
      parts.add(unlikeWords());
    }
    return String.join(" ", parts);
  }

  private String unlikeWords() {
    String differ =
        "These boards differ: one in three is off the average by more than a factor of %s"
            .formatted(Figures.three(Math.exp(boardSpread)));
    return evidence.boards() < BOARDS_THAT_MEASURE
        ? differ
            + ", and %d boards are too few to promise for another; it takes at least %d."
                .formatted(evidence.boards(), BOARDS_THAT_MEASURE)
        : differ
            + ", too much to promise for another; sort them (heartwood, grain, age, moisture).";
  }

  private String hopeWords(Forecast hope) {
    return "The best setting so far, %s, may char as many as %s of patches (asked: at most %s) and may clear as few as %s (asked: at least %s)."
        .formatted(
            words(hope),
            Figures.atMost(hope.charRiskUpper()),
            Figures.share(asked.charRisk()),
            Figures.atLeast(hope.clearChanceLower()),
            Figures.share(asked.clearChance()));
  }

  /** Why a setting that keeps both promises by the models may still be in no window. */
  private List<String> unborneWords() {
    List<String> parts = new ArrayList<>();
    if (!witnesses.charSeen()) {
      parts.add(
          "Until a patch has charred, a window reaches no hotter than %d patches that came through unharmed, each at least as hot in every respect."
              .formatted(Witnesses.FEWEST));
    }
    if (!witnesses.finishSeen()) {
      parts.add(
          "Until %d patches have kept finish, a window reaches no cooler than %d that cleared, each at most as hot in every respect."
              .formatted(Witnesses.FEWEST_UNCLEARED, Witnesses.FEWEST));
    }
    return parts;
  }

  private String notYetStep() {
    if (bestHope.isEmpty()) {
      return "Burn patches with this rig, from the lowest rung up, one knob at a time.";
    }
    Forecast hope = bestHope.get();
    double ceiling = Math.exp(reach.lnHighestUncharredDose()) * STEP;
    String speeds =
        List.of(1 / STEP, 1.0, STEP).stream()
            .map(f -> hope.speedMillimetresPerSecond() * f)
            .filter(u -> bench.exposure(hope.powerPercent(), u).doseJoulesPerCm2() <= ceiling)
            .sorted((a, b) -> Double.compare(b, a))
            .map(u -> Figures.digits(u, 2))
            .collect(Collectors.joining(", "));
    if (speeds.isEmpty()) {
      return "Go back down the ladder: every dose near the best setting has charred before. Burn"
          + " cooler patches first, on a board not used yet.";
    }
    return "Burn at %s %%, %s %s mm/s in that order, on a board not used yet, judging after every pass up to %s; then ask again."
        .formatted(
            Figures.three(hope.powerPercent()),
            bench.speed().kind().words(),
            speeds,
            Figures.count(Math.max(hope.passes(), 2) + 1, "pass", "passes"));
  }

  private String unreliableReason() {
    List<String> failing =
        Stream.of(charChecks, clearingChecks)
            .flatMap(checks -> checks.words(Severity.FAILS).stream())
            .toList();
    String told = String.join(" ", failing.subList(0, Math.min(MOST_TOLD, failing.size())));
    int more = failing.size() - MOST_TOLD;
    return more > 0
        ? told + " And %s.".formatted(Figures.count(more, "finding more", "findings more"))
        : told;
  }

  private String words(Forecast f) {
    return "%s %%, %s %s mm/s, %s"
        .formatted(
            Figures.three(f.powerPercent()),
            bench.speed().kind().words(),
            Figures.three(f.speedMillimetresPerSecond()),
            Figures.count(f.passes(), "pass", "passes"));
  }
}
