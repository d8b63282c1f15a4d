package charline.model.classical;

import charline.model.CensoredPasses;
import charline.model.Event;
import charline.model.Trials;
import charline.refusal.Refusal;
import charline.stat.linear.Design;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.BinomialSample.Bracket;
import charline.stat.survival.CensoredTimes;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The patches of a stratum as rows of a logistic regression: the last passes without the event give
 * a failure, the first with it a success, and where a patch has both they are joined by a bracket.
 * A patch read once is one row, and the fit plain logistic regression.
 */
final class PatchRows {
  /** No patch at all, where one could be left out. */
  static final int NONE = -1;

  private final Trials trials;
  private final Event event;
  private final List<Integer> patchOfRow = new ArrayList<>();
  private final List<Integer> passesOfRow = new ArrayList<>();
  private final List<Integer> outcomes = new ArrayList<>();
  private final List<Bracket> brackets = new ArrayList<>();
  private final Columns columns;

  PatchRows(Trials trials, Event event) {
    this.trials = trials;
    this.event = event;
    List<CensoredPasses> all = trials.censored(event);
    for (int i = 0; i < all.size(); i++) {
      CensoredPasses patch = all.get(i);
      if (patch.passesWithout() > 0) {
        add(i, patch.passesWithout(), 0);
      }
      if (patch.seen()) {
        add(i, patch.passesWith(), 1);
      }
      if (patch.seen() && patch.passesWithout() > 0) {
        brackets.add(new Bracket(outcomes.size() - 2, outcomes.size() - 1));
      }
    }
    double reference = trials.lnReferenceIntensity();
    this.columns =
        Columns.of(
            trials.stratum().emission(),
            patchOfRow.stream().mapToDouble(i -> all.get(i).lnDose()).toArray(),
            patchOfRow.stream().mapToDouble(i -> all.get(i).lnIntensity() - reference).toArray(),
            passesOfRow.stream().mapToDouble(Math::log).toArray());
  }

  private void add(int patch, int passes, int outcome) {
    patchOfRow.add(patch);
    passesOfRow.add(passes);
    outcomes.add(outcome);
  }

  Columns columns() {
    return columns;
  }

  int count() {
    return outcomes.size();
  }

  int bracketCount() {
    return brackets.size();
  }

  int patchCount() {
    return trials.patches().size();
  }

  Patch patch(int index) {
    return trials.patches().get(index);
  }

  int events() {
    return outcomes.stream().mapToInt(Integer::intValue).sum();
  }

  int outcome(int row) {
    return outcomes.get(row);
  }

  /** One, where passes are a column; else the passes of the middle row, and mostly of all. */
  int referencePasses() {
    return columns.have(Columns.PASSES)
        ? 1
        : passesOfRow.stream().sorted().toList().get(passesOfRow.size() / 2);
  }

  /**
   * The sample for a fit.
   *
   * @throws Refusal where there are fewer rows than coefficients
   */
  BinomialSample sample() {
    return sample(allBut(NONE));
  }

  /** Rows that are not of a patch; all of them for {@link #NONE}. */
  int[] allBut(int patch) {
    return IntStream.range(0, count()).filter(r -> patchOfRow.get(r) != patch).toArray();
  }

  /** Patches but one; all of them for {@link #NONE}. */
  int[] patchesBut(int patch) {
    return IntStream.range(0, patchCount()).filter(p -> p != patch).toArray();
  }

  /** The board of each of some rows. */
  List<String> boards(int[] rows) {
    return IntStream.of(rows).mapToObj(r -> patch(patchOfRow.get(r)).board().name()).toList();
  }

  /** Columns that do not change from reading to reading, with one value for each patch but one. */
  double[][] byPatch(List<String> names, int leftOut) {
    return names.stream()
        .map(name -> columns.values().get(columns.names().indexOf(name)))
        .map(
            column ->
                IntStream.of(patchesBut(leftOut))
                    .mapToDouble(p -> column[patchOfRow.indexOf(p)])
                    .toArray())
        .toArray(double[][]::new);
  }

  /** Passes to the event of each patch but one, known to lie between two readings. */
  CensoredTimes times(int leftOut) {
    List<CensoredPasses> kept =
        IntStream.of(patchesBut(leftOut)).mapToObj(trials.censored(event)::get).toList();
    return CensoredTimes.between(
        kept.stream().mapToDouble(CensoredPasses::passesWithout).toArray(),
        kept.stream()
            .mapToDouble(c -> c.seen() ? c.passesWith() : Double.POSITIVE_INFINITY)
            .toArray());
  }

  /** Mean ln dose of the patches. */
  double middleLnDose() {
    return trials.censored(event).stream()
        .mapToDouble(CensoredPasses::lnDose)
        .average()
        .orElseThrow();
  }

  BinomialSample sample(int[] rows) {
    double[][] all = columns.values().toArray(double[][]::new);
    Design whole = Design.withIntercept(columns.names(), all);
    return BinomialSample.of(whole, outcomes.stream().mapToInt(Integer::intValue).toArray())
        .withBrackets(brackets)
        .rows(rows);
  }

  /**
   * What was seen at one reading that could still show the event.
   *
   * @param shown whether it did
   * @param before covariates of the reading before, null for the first
   * @param now covariates of this one
   */
  record Look(boolean shown, double[] before, double[] now) {}

  /** The readings of a patch up to the first with the event, as far as the columns tell them. */
  List<Look> looks(int patch) {
    int row = patchOfRow.indexOf(patch);
    double[] base = new double[columns.names().size() + 1];
    base[0] = 1;
    for (int j = 1; j < base.length; j++) {
      base[j] = columns.values().get(j - 1)[row];
    }
    int passesAt = 1 + columns.names().indexOf(Columns.PASSES);
    if (passesAt == 0) {
      return List.of(new Look(outcomes.get(row) == 1, null, base));
    }
    List<Look> looks = new ArrayList<>();
    double[] before = null;
    for (Reading reading : trials.patches().get(patch).readings()) {
      boolean shown = event.shownBy(reading.outcome(), trials.acceptTint());
      double[] now = Arrays.copyOf(base, base.length);
      now[passesAt] = Math.log(reading.passes());
      looks.add(new Look(shown, before, now));
      before = now;
      if (shown) {
        break;
      }
    }
    return looks;
  }
}
