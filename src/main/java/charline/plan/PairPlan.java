package charline.plan;

import charline.model.ModelFit;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Patch;
import charline.window.PredictedChance;
import charline.window.Recommendation;
import charline.window.RigSetup;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * Chooses pairs of patches that tell two ways of working apart. Both patches of a pair lie on one
 * board and get one dose, so that what boards differ by drops out. Doses are such that the way that
 * chars sooner chars at the second, the fourth or the sixth pass with an even chance: read after
 * every pass, such a patch brackets clearing and char alike. No patch is hotter than a quarter
 * above what its own way bore.
 *
 * @param planner knows the ladder of each way
 */
public record PairPlan(Planner planner) {
  /** After every pass up to this one a patch is read, but never past the first brown. */
  private static final int PASSES = Planner.PASSES;

  private static final int[] CHARS_AT = {4, 6, 2};

  /**
   * One of the two ways.
   *
   * @param trials patches behind its models
   * @param found its window, or why it has none
   */
  public record Way(Trials trials, Recommendation found) {
    private RigSetup bench() {
      return found.bench();
    }

    private ModelFit charring() {
      return found.charFit().orElseThrow();
    }

    private ModelFit clearing() {
      return found.clearingFit().orElseThrow();
    }

    /** The power that the middle one of the rig's patches had. */
    private double powerPercent() {
      double[] powers =
          trials.patches().stream()
              .filter(p -> p.rig().id().equals(bench().rig().id()))
              .mapToDouble(PairPlan::watts)
              .map(bench()::percent)
              .sorted()
              .toArray();
      double middle = powers[powers.length / 2];
      return Math.min(Math.round(middle), bench().highestPercent());
    }

    private double lnIntensity() {
      return Math.log(bench().exposure(powerPercent(), 1).intensity());
    }

    /** Dose at which a patch chars by a pass with an even chance, as a natural logarithm. */
    private double lnOnset(int passes) {
      return charring().posterior().doseLimit(0.5).lnDose(0.5, lnIntensity(), passes);
    }
  }

  private static double watts(Patch patch) {
    return patch
        .rig()
        .deliveredWatts(patch.settings().power(), patch.settings().pulses(), patch.burnedAt());
  }

  /**
   * Pairs for two ways.
   *
   * @param site where they are burned; on the piece itself there are none
   * @param atHand boards at hand, may be empty
   * @param count how many pairs, 1 or more
   */
  public PairList pairs(Way first, Way second, Site site, List<Board> atHand, int count) {
    if (site == Site.PIECE) {
      return new PairList(site, List.of());
    }
    double ceiling =
        Math.min(
            planner.lnCeiling(first.trials(), first.found()),
            planner.lnCeiling(second.trials(), second.found()));
    Random lots = new Random(31L * first.trials().patches().size() + count);
    BoardRota rota = new BoardRota(first.trials().patches(), atHand, Planner.FEWEST_BOARDS, lots);
    List<PairList.Pair> pairs = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      int passes = CHARS_AT[k % CHARS_AT.length];
      double lnDose = Math.min(ceiling, Math.min(first.lnOnset(passes), second.lnOnset(passes)));
      List<PairList.Burn> burns =
          new ArrayList<>(List.of(burn(true, first, lnDose), burn(false, second, lnDose)));
      // Whatever comes second finds the board a little warmer: each way has its turn.
      if (k % 2 == 1) {
        Collections.swap(burns, 0, 1);
      }
      pairs.add(new PairList.Pair(k + 1, rota.next(), burns));
    }
    pairs.sort(Comparator.comparingDouble(pair -> pair.burns().get(0).setting().lnDose()));
    return new PairList(site, numbered(pairs));
  }

  /** In the order of burning, new boards as they come up. */
  private static List<PairList.Pair> numbered(List<PairList.Pair> pairs) {
    List<PairList.Pair> numbered = new ArrayList<>();
    List<Place> fresh = new ArrayList<>();
    for (PairList.Pair pair : pairs) {
      Place place = pair.place();
      if (place.isFresh()) {
        if (!fresh.contains(place)) {
          fresh.add(place);
        }
        place = Place.fresh(fresh.indexOf(place) + 1);
      }
      numbered.add(new PairList.Pair(numbered.size() + 1, place, pair.burns()));
    }
    return numbered;
  }

  private static PairList.Burn burn(boolean first, Way way, double lnDose) {
    RigSetup bench = way.bench();
    DialSetting setting = new Dial(bench).at(way.powerPercent(), lnDose);
    PredictedChance risk = setting.predicted(way.charring(), PASSES);
    return new PairList.Burn(
        first,
        bench,
        setting,
        bench.settings(setting.powerPercent(), setting.speedMillimetresPerSecond()),
        PASSES,
        risk.mean(),
        risk.upper(way.found().asked().confidence()),
        setting.predicted(way.clearing(), PASSES).mean());
  }
}
