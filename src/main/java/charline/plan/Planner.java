package charline.plan;

import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.window.Box;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.Standing;
import charline.window.TriedKnobs;
import charline.window.UntriedKnob;
import charline.window.Verdict;
import charline.window.WindowFinder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Chooses the next patches of a stratum.
 *
 * @param fitter fits the models, and holds what is believed before any trial
 * @param boards new boards are asked for until there are so many
 */
public record Planner(Fitter fitter, int boards) {
  /**
   * Three boards let a window stand, but say little of how much boards differ: with five, two
   * thirds of the patches do where the window is narrow (reports/planning.md).
   */
  public static final int BOARDS = 5;

  /** Where no more than these can be had. */
  public static final int FEWEST_BOARDS = 3;

  /** After every pass up to this one a patch is read, but never past the first brown. */
  public static final int PASSES = 8;

  /** On a rig new to the trials the first patch lies so many rungs below the start setting. */
  private static final int BELOW_START = 2;

  public static Planner withDefaults() {
    return new Planner(Fitter.withDefaults(), BOARDS);
  }

  /** The same, content with three boards. */
  public Planner withFewBoards() {
    return new Planner(fitter, FEWEST_BOARDS);
  }

  /**
   * The first patches of a stratum that has none.
   *
   * @param bench rig and fixed knobs
   * @param asked what the window is to keep
   * @param site where they are burned; on the piece there is nothing to burn before any trial
   * @param atHand boards at hand, may be empty
   * @param count how many, 1 or more
   */
  public NextPatches first(
      RigSetup bench, Requirements asked, Site site, List<Board> atHand, int count) {
    if (site == Site.PIECE) {
      return new NextPatches(
          bench,
          asked,
          site,
          Optional.empty(),
          new Progress.NothingBurned(),
          new Advice.BeginOnOffcut(),
          List.of());
    }
    Random lots = new Random(2026);
    double intensity = bench.exposure(40, 20).intensity();
    Outlook outlook = Outlook.beforeTrials(fitter, asked, bench, intensity);
    Ladder ladder = Ladder.from(outlook.lnSafeDose(Math.log(intensity)));
    PatchSelection drafting =
        new PatchSelection(bench, asked, site, outlook, ladder, List.of(), PASSES);
    BoardRota rota = new BoardRota(List.of(), atHand, boards, lots);
    List<Suggestion> drafts =
        new PatchList(bench, asked, site, outlook, drafting, List.of(), rota).draft(count);
    return new NextPatches(
        bench,
        asked,
        site,
        Optional.empty(),
        new Progress.FirstLadder(),
        new Advice.InOrder(),
        PatchList.ordered(drafts, drafting, 0, lots));
  }

  /**
   * The next patches of a stratum.
   *
   * @param trials what was burned, in the order of burning
   * @param bench rig and fixed knobs
   * @param asked what the window is to keep
   * @param site where they are burned
   * @param atHand boards at hand, may be empty
   * @param count how many, 1 or more
   */
  public NextPatches next(
      Trials trials, RigSetup bench, Requirements asked, Site site, List<Board> atHand, int count) {
    Recommendation found = new WindowFinder(fitter).recommend(trials, bench, asked);
    return next(trials, found, site, atHand, count);
  }

  /** The same, where the window has been looked for already. */
  public NextPatches next(
      Trials trials, Recommendation found, Site site, List<Board> atHand, int count) {
    if (found.bench().linesApart()) {
      return nothing(found, site);
    }
    return switch (found.verdict()) {
      case WINDOW -> confirming(trials, found, site, atHand, count);
      case NOT_YET, UNRELIABLE -> searching(trials, found, site, atHand, count);
      case NONE -> nothing(found, site);
    };
  }

  /** Highest dose that the ladder of one way of working permits, as a natural logarithm. */
  double lnCeiling(Trials trials, Recommendation found) {
    return ladder(trials, found.bench(), outlook(trials, found), found.asked()).lnCeiling();
  }

  private static NextPatches nothing(Recommendation found, Site site) {
    return list(
        found,
        site,
        new Progress.AsFound(found.reasons()),
        new Advice.AsFound(found.nextSteps(), false),
        List.of());
  }

  private NextPatches searching(
      Trials trials, Recommendation found, Site site, List<Board> atHand, int count) {
    int wanted = Math.max(boards, found.boardsWanted());
    return searching(
        trials, found, site, rota(site, trials.patches(), atHand, wanted, lots(trials)), count);
  }

  private NextPatches searching(
      Trials trials, Recommendation found, Site site, BoardRota rota, int count) {
    RigSetup bench = found.bench();
    Requirements asked = found.asked();
    Random lots = lots(trials);
    Outlook outlook = outlook(trials, found);
    Ladder ladder = ladder(trials, bench, outlook, asked);
    int known = ladder.size();
    PatchSelection drafting =
        new PatchSelection(bench, asked, site, outlook, ladder, trials.patches(), PASSES);
    PatchList list = new PatchList(bench, asked, site, outlook, drafting, trials.patches(), rota);
    boolean allCharred = known == 0 && site != Site.PIECE;
    List<Suggestion> suggestions =
        allCharred
            ? list.descent(ladder.lnFirst(), count)
            : PatchList.ordered(list.draft(count), drafting, known, lots);
    return list(
        found,
        site,
        new Progress.AsFound(found.reasons()),
        advice(found, suggestions, site, allCharred),
        suggestions);
  }

  private static Advice advice(
      Recommendation found, List<Suggestion> list, Site site, boolean allCharred) {
    if (list.isEmpty()) {
      return new Advice.NothingAllowed(site);
    }
    if (allCharred) {
      return new Advice.DownUntilUnharmed();
    }
    return found.verdict() == Verdict.UNRELIABLE
        ? new Advice.AsFound(found.nextSteps(), true)
        : new Advice.InOrder();
  }

  /** The same setting again, on boards not burned yet where there are any. */
  private NextPatches confirming(
      Trials trials, Recommendation found, Site site, List<Board> atHand, int count) {
    int wanted = Math.max(FEWEST_BOARDS, atHand.size() + Math.min(count, FEWEST_BOARDS));
    return confirming(
        trials, found, site, rota(site, trials.patches(), atHand, wanted, lots(trials)), count);
  }

  private NextPatches confirming(
      Trials trials, Recommendation found, Site site, BoardRota rota, int count) {
    RigSetup bench = found.bench();
    Requirements asked = found.asked();
    Box box = found.chosen().orElseThrow();
    Outlook outlook = outlook(trials, found);
    List<UntriedKnob> untriedKnobs = found.tried().untried(bench);
    boolean untried = own(trials, bench).isEmpty();
    Ladder tried = ladder(trials, bench, outlook, asked);
    Ladder ladder =
        untried
            ? Ladder.from(
                Math.min(
                    tried.lnCeiling(),
                    Math.log(box.start().doseJoulesPerCm2()) - BELOW_START * Ladder.LN_STEP))
            : tried;
    int known = ladder.size();
    List<Suggestion> list = new ArrayList<>();
    ConfirmingRun confirming = new ConfirmingRun(found, outlook, ladder);
    for (int k = 0; k < count; k++) {
      Optional<Suggestion> next = confirming.next(k + 1, rota.next(), known);
      if (next.isEmpty()) {
        break;
      }
      list.add(next.get());
    }
    CleanRun run = confirming.run(trials);
    return list(
        found,
        site,
        new Progress.ToConfirm(burnedBy(trials.patches(), bench.rig()).isEmpty(), untriedKnobs),
        new Advice.Repeat(found.nextSteps(), run, asked, box.passes()),
        list);
  }

  /**
   * The next patches on one piece.
   *
   * @param trials what was burned on any board, in the order of burning
   * @param piece the piece
   * @param general what the other boards say of any board
   * @param known what they and the piece's own patches say of the piece; empty where it has none
   * @param site {@link Site#HIDDEN}, or {@link Site#PIECE} where no place of it may brown
   * @param count how many at most, 1 or more
   */
  public NextPatches onPiece(
      Trials trials,
      Board piece,
      Recommendation general,
      Optional<Recommendation> known,
      Site site,
      int count) {
    Recommendation found = known.orElse(general);
    if (found.bench().linesApart() || found.verdict() == Verdict.NONE) {
      return nothing(found, site);
    }
    boolean window = found.verdict() == Verdict.WINDOW;
    if (window && found.standing().equals(Optional.of(Standing.CONFIRMED))) {
      return list(
          found,
          site,
          new Progress.AsFound(found.reasons()),
          new Advice.PieceConfirmed(piece.name()),
          List.of());
    }
    Place place = Place.of(piece);
    if (window && (known.isPresent() || site == Site.PIECE)) {
      return confirming(
          trials, found, site, BoardRota.on(place), Math.min(count, found.controlsWanting()));
    }
    if (site == Site.PIECE) {
      return list(
          found,
          site,
          new Progress.AsFound(found.reasons()),
          new Advice.NothingAllowed(site),
          List.of());
    }
    List<Patch> charred = charredControls(trials, found);
    if (!charred.isEmpty()) {
      return list(
          found,
          site,
          new Progress.AsFound(found.reasons()),
          new Advice.AsFound(found.nextSteps(), true),
          plan(trials, place, found).cooler(charred).stream().limit(count).toList());
    }
    List<Suggestion> places = placing(trials, place, general, found, count);
    return places.isEmpty()
        ? searching(trials, found, site, BoardRota.on(place), count)
        : list(
            found,
            site,
            known.isEmpty()
                ? new Progress.ToPlacePiece(piece.name())
                : new Progress.AsFound(found.reasons()),
            new Advice.OnHiddenPlace(piece.name(), places.size(), PiecePlan.expectedBrown(places)),
            places);
  }

  private static List<Patch> charredControls(Trials trials, Recommendation found) {
    List<String> codes = found.charredControls();
    return trials.patches().stream().filter(p -> codes.contains(p.code())).toList();
  }

  private PiecePlan plan(Trials trials, Place place, Recommendation found) {
    RigSetup bench = found.bench();
    Outlook outlook = outlook(trials, found);
    Ladder ladder = ladder(trials, bench, outlook, found.asked());
    return new PiecePlan(bench, found.asked(), outlook, ladder, place);
  }

  /** Patches that show where a piece lies, those that it has already left out. */
  private List<Suggestion> placing(
      Trials trials, Place place, Recommendation general, Recommendation found, int count) {
    RigSetup bench = found.bench();
    PiecePlan plan = plan(trials, place, found);
    List<Patch> own =
        trials.patches().stream()
            .filter(p -> place.id().equals(Optional.of(p.board().id())))
            .toList();
    return general
        .chosen()
        .map(Box::start)
        .map(
            start -> DialSetting.on(bench, start.powerPercent(), start.speedMillimetresPerSecond()))
        .or(() -> plan.hope(trials.patches()))
        .map(start -> plan.list(start, own).stream().limit(count).toList())
        .orElse(List.of());
  }

  private static NextPatches list(
      Recommendation found, Site site, Progress progress, Advice advice, List<Suggestion> list) {
    return new NextPatches(
        found.bench(), found.asked(), site, Optional.of(found), progress, advice, list);
  }

  private static BoardRota rota(
      Site site, List<Patch> patches, List<Board> atHand, int atLeast, Random lots) {
    return site == Site.PIECE ? BoardRota.onPiece() : new BoardRota(patches, atHand, atLeast, lots);
  }

  private static Outlook outlook(Trials trials, Recommendation found) {
    Trials counted = trials.acceptingTint(found.asked().acceptTint());
    return new Outlook(
        found.asked(),
        found.charFit().orElseThrow(),
        found.clearingFit().orElseThrow(),
        Optional.of(counted),
        found.bench().strokes());
  }

  /** Where nothing was burned without char, the ladder begins again at its first rung. */
  private Ladder ladder(Trials trials, RigSetup bench, Outlook outlook, Requirements asked) {
    double lnIntensity = Math.log(outlook.charFit().referenceIntensity());
    // Two fits that are seldom needed.
    return Ladder.of(
        trials.patches(),
        own(trials, bench),
        () ->
            Outlook.beforeTrials(fitter, asked, bench, outlook.charFit().referenceIntensity())
                .lnSafeDose(lnIntensity));
  }

  /**
   * What the rig burned in the way that is asked about with its fixed knobs as they stand: none
   * where one of them was never tried, and no patch with another pulse duration, of which dose and
   * intensity know nothing.
   */
  private static List<Patch> own(Trials trials, RigSetup bench) {
    List<Patch> patches = trials.patches();
    if (!TriedKnobs.of(patches).untried(bench).isEmpty()) {
      return List.of();
    }
    return burnedBy(patches, bench.rig()).stream()
        .filter(p -> trials.with(List.of(p)).tried(trials.asked()))
        .filter(
            p ->
                TriedKnobs.of(List.of(p)).untried(bench).stream()
                    .noneMatch(u -> u.knob() == Knob.PULSE && !u.tried().isEmpty()))
        .toList();
  }

  private static List<Patch> burnedBy(List<Patch> patches, Rig rig) {
    return patches.stream().filter(p -> p.rig().id().equals(rig.id())).toList();
  }

  /** The same trials, the same lots. */
  private Random lots(Trials trials) {
    return new Random(31 * fitter.seed() + trials.patches().size());
  }
}
