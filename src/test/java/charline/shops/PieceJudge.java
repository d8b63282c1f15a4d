package charline.shops;

import charline.exposure.HandPass;
import charline.model.Fitter;
import charline.model.PieceFits;
import charline.model.Trials;
import charline.plan.NextPatches;
import charline.plan.Planner;
import charline.plan.Site;
import charline.plan.Suggestion;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.RigSetup;
import charline.window.Standing;
import charline.window.WindowFinder;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A piece of a shop's: burns on it what the planner says, and holds the windows that it is given
 * against what is true on that piece.
 */
final class PieceJudge {
  private static final int BOARD = 99;
  private static final int MOST_ROUNDS = 5;

  private final Shop shop;
  private final RigSetup bench;
  private final Recommendation general;
  private final Random random;
  private final WindowFinder finder;
  private final Planner planner;
  private final Board board;

  /** What the piece is like, in units of the spread of boards. */
  private final double charShift;

  private final double clearingShift;

  PieceJudge(Shop shop, Fitter fitter, RigSetup bench, Recommendation general, Random random) {
    this.shop = shop;
    this.bench = bench;
    this.general = general;
    this.random = random;
    finder = new WindowFinder(fitter);
    planner = new Planner(fitter, Planner.BOARDS);
    board = ShopBench.patch(0, BOARD, 60, 20, List.of(new ShopBench.Seen(1, false, false))).board();
    charShift = shop.truth().shift(random);
    clearingShift = shop.truth().shift(random);
  }

  Judged.Piece judge(double jobError) {
    List<Patch> sparing = new ArrayList<>(shop.patches());
    burn(sparing, Site.PIECE, Optional.empty());
    Optional<Recommendation> spare = known(sparing).filter(PieceJudge::confirmed);

    List<Patch> patches = new ArrayList<>(shop.patches());
    burn(patches, Site.HIDDEN, Optional.empty());
    int placing = patches.size() - shop.patches().size();
    int browned =
        (int) own(patches).stream().filter(p -> p.lastReading().outcome().charred()).count();
    Optional<Recommendation> placed = known(patches);
    Optional<Recommendation> last = placed;
    for (int round = 0;
        round < MOST_ROUNDS && !last.map(PieceJudge::confirmed).orElse(true);
        round++) {
      if (burn(patches, Site.HIDDEN, last) == 0) {
        break;
      }
      last = known(patches);
    }
    return new Judged.Piece(
        kept(Optional.of(general), jobError),
        kept(spare, jobError),
        kept(placed, jobError),
        kept(last.filter(PieceJudge::confirmed), jobError),
        browned,
        placing,
        patches.size() - shop.patches().size());
  }

  private static boolean confirmed(Recommendation found) {
    return found.standing().equals(Optional.of(Standing.CONFIRMED));
  }

  private List<Patch> own(List<Patch> patches) {
    return patches.stream().filter(p -> p.board().equals(board)).toList();
  }

  private static Trials trials(List<Patch> patches) {
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private Optional<Recommendation> known(List<Patch> patches) {
    if (own(patches).isEmpty()) {
      return Optional.empty();
    }
    Trials trials = trials(patches);
    return Optional.of(
        finder.recommend(trials, bench, Judge.ASKED, PieceFits.of(finder.fitter(), trials, board)));
  }

  /** Burns the planner's list, but for what must wait for a patch that browned at once. */
  private int burn(List<Patch> patches, Site site, Optional<Recommendation> known) {
    NextPatches next = planner.onPiece(trials(patches), board, general, known, site, 6);
    Set<Integer> brownAtOnce = new HashSet<>();
    int burned = 0;
    for (Suggestion s : next.suggestions()) {
      if (s.onlyAfter().isPresent() && brownAtOnce.contains(s.onlyAfter().getAsInt())) {
        brownAtOnce.add(s.number());
        continue;
      }
      Patch patch = burn(patches.size(), s);
      patches.add(patch);
      burned++;
      if (patch.readings().get(0).outcome().charred()) {
        brownAtOnce.add(s.number());
      }
    }
    return burned;
  }

  private Patch burn(int number, Suggestion s) {
    Truth.Outcome came =
        shop.truth()
            .burn(
                s.setting().lnDose(),
                s.setting().lnIntensity(),
                new double[] {charShift, clearingShift},
                random);
    double hand = ((HandPass) s.settings().form()).handSpeedMillimetresPerSecond();
    return ShopBench.patch(
        number,
        BOARD,
        s.setting().powerPercent(),
        hand,
        shop.truth().seen(IntStream.rangeClosed(1, s.passes()).toArray(), came, random));
  }

  private Optional<Judged.Kept> kept(Optional<Recommendation> found, double jobError) {
    return found
        .flatMap(Recommendation::chosen)
        .map(
            box ->
                new Judged.Kept(
                    chance(shop.charring(), charShift, box.hotCorner(), jobError),
                    chance(shop.clearing(), clearingShift, box.coldCorner(), jobError)));
  }

  private static double chance(Law law, double shift, Forecast at, double jobError) {
    return law.chanceOn(
        shift, at.doseJoulesPerCm2() * Math.exp(jobError), at.intensity(), at.passes());
  }
}
