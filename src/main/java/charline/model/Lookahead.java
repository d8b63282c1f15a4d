package charline.model;

import charline.stat.distribution.Logistic;
import charline.stat.quadrature.GaussHermite;
import charline.stat.sampling.WeightedDraws;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What one event's posterior would become after readings that have not been made: its draws,
 * thinned, are weighted again by the likelihood of each outcome that a patch may have.
 *
 * <p>A patch read after every pass up to n meets its event in one of n + 1 cells: by the first
 * pass, between two passes, or not at all. On a board with patches the board's shift is known in
 * part, which every draw has worked out by itself; on a new one it is free.
 *
 * <p>Not safe for several threads.
 */
public final class Lookahead {
  private static final GaussHermite BOARD_RULE = new GaussHermite(9);

  /** Patches to come have the coat that the posterior is for. */
  private static final double[] AS_ASKED = {};

  private final Posterior draws;
  private final double[] weights;
  private final Map<UUID, List<Seen>> burned = new HashMap<>();
  private final Map<UUID, double[][]> boards = new HashMap<>();
  private final double[][] anyBoard;

  /** A patch on a board, its passes as logarithms. */
  private record Seen(
      double lnDose, double lnIntensity, double[] wayStep, double lnWithout, double lnWith) {}

  private Lookahead(Posterior draws) {
    this.draws = draws;
    weights = new double[draws.size()];
    Arrays.fill(weights, 1.0 / weights.length);
    double[] rule = new double[BOARD_RULE.points()];
    Arrays.setAll(rule, BOARD_RULE::weight);
    anyBoard = new double[draws.size()][];
    Arrays.fill(anyBoard, rule);
  }

  /**
   * @param fit the posterior so far
   * @param trials the patches behind it; empty for a prior
   * @param count draws to keep: 500 give spreads to about 3 %
   */
  public static Lookahead of(ModelFit fit, Optional<Trials> trials, int count) {
    Lookahead ahead = new Lookahead(fit.posterior().thinned(count));
    trials.ifPresent(known -> ahead.sortByBoard(known, fit.event()));
    return ahead;
  }

  private void sortByBoard(Trials trials, Event event) {
    List<CensoredPasses> data = trials.censored(event);
    List<double[]> waySteps = trials.waySteps(event);
    for (int p = 0; p < data.size(); p++) {
      Patch patch = trials.patches().get(p);
      CensoredPasses d = data.get(p);
      double with = d.seen() ? Math.log(d.passesWith()) : Double.POSITIVE_INFINITY;
      double without = Math.log(d.passesWithout()); // -infinity where the first reading shows it
      burned
          .computeIfAbsent(patch.board().id(), board -> new ArrayList<>())
          .add(new Seen(d.lnDose(), d.lnIntensity(), waySteps.get(p), without, with));
    }
  }

  /** What every draw knows of a board; of many boards few are ever asked about. */
  private double[][] shift(Optional<UUID> board) {
    return board.map(b -> boards.computeIfAbsent(b, this::learned)).orElse(anyBoard);
  }

  private double[][] learned(UUID board) {
    double[][] known = anyBoard;
    for (Seen seen : burned.getOrDefault(board, List.of())) {
      known = sharpened(known, seen);
    }
    return known;
  }

  private double[][] sharpened(double[][] known, Seen seen) {
    double[][] sharper = new double[known.length][BOARD_RULE.points()];
    for (int i = 0; i < known.length; i++) {
      double sum = 0;
      double likeDose = seen.lnDose - draws.wayShift(i, seen.wayStep);
      for (int q = 0; q < sharper[i].length; q++) {
        double cell =
            cdf(i, q, likeDose, seen.lnIntensity, seen.lnWith)
                - cdf(i, q, likeDose, seen.lnIntensity, seen.lnWithout);
        sharper[i][q] = known[i][q] * Math.max(cell, Double.MIN_NORMAL);
        sum += sharper[i][q];
      }
      for (int q = 0; q < sharper[i].length; q++) {
        sharper[i][q] /= sum;
      }
    }
    return sharper;
  }

  private double cdf(int draw, int node, double lnDose, double lnIntensity, double lnPasses) {
    if (lnPasses == Double.NEGATIVE_INFINITY) {
      return 0;
    }
    return lnPasses == Double.POSITIVE_INFINITY
        ? 1
        : Logistic.cdf(draws.score(draw, BOARD_RULE.node(node), lnDose, lnIntensity, lnPasses));
  }

  /** Number of draws kept. */
  public int size() {
    return weights.length;
  }

  /** The doses at which the chance on a new board is a given one, over the thinned draws. */
  public DoseLimit doseLimit(double chance) {
    return doseLimit(chance, 0);
  }

  /** The same over an area of which a share gets its passes twice. */
  public DoseLimit doseLimit(double chance, double seamShare) {
    return draws.doseLimit(chance, seamShare);
  }

  /** Quantile of a quantity given per thinned draw, under what has been assumed so far. */
  public double quantile(double[] perDraw, double probability) {
    return WeightedDraws.quantile(perDraw, weights, probability);
  }

  /** Standard deviation of a quantity given per thinned draw, under what has been assumed. */
  public double spread(double[] perDraw) {
    return spread(perDraw, weights, 1);
  }

  private static double spread(double[] values, double[] weights, double total) {
    double mean = WeightedDraws.mean(values, weights) / total;
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i] * (values[i] - mean) * (values[i] - mean);
    }
    return Math.sqrt(sum / total);
  }

  /** The event's chance on a new board, averaged, under what has been assumed so far. */
  public double newBoardChance(double lnDose, double lnIntensity, int passes) {
    return prospect(lnDose, lnIntensity, passes, Optional.empty()).chance();
  }

  /**
   * A patch that may be burned, read after every pass.
   *
   * @param lnDose natural logarithm of the dose per pass in J/cm²
   * @param lnIntensity natural logarithm of fluence or irradiance
   * @param passes passes to read, 1 or more
   * @param board the board, empty for one not burned yet
   */
  public Prospect prospect(double lnDose, double lnIntensity, int passes, Optional<UUID> board) {
    double[][] shift = shift(board);
    double[][] cells = new double[passes + 1][weights.length];
    for (int i = 0; i < weights.length; i++) {
      double before = 0;
      for (int n = 1; n <= passes; n++) {
        double lnPasses = Math.log(n);
        double by = 0;
        for (int q = 0; q < BOARD_RULE.points(); q++) {
          by += shift[i][q] * cdf(i, q, lnDose, lnIntensity, lnPasses);
        }
        cells[n - 1][i] = Math.max(0, by - before);
        before = by;
      }
      cells[passes][i] = Math.max(0, 1 - before);
    }
    return new Prospect(lnDose, lnIntensity, board, cells);
  }

  /** One patch to come, with the chance of each of its outcomes in every draw. */
  public final class Prospect {
    private final double lnDose;
    private final double lnIntensity;
    private final Optional<UUID> board;
    private final double[][] cells;

    private Prospect(double lnDose, double lnIntensity, Optional<UUID> board, double[][] cells) {
      this.lnDose = lnDose;
      this.lnIntensity = lnIntensity;
      this.board = board;
      this.cells = cells;
    }

    /** Chance that the event is met by the last pass. */
    public double chance() {
      return 1 - WeightedDraws.mean(cells[cells.length - 1], weights);
    }

    /** Standard deviation of a quantity that is to be expected once the patch has been read. */
    public double expectedSpread(double[] perDraw) {
      double expected = 0;
      double[] reweighted = new double[weights.length];
      for (double[] cell : cells) {
        double chance = 0;
        for (int i = 0; i < reweighted.length; i++) {
          reweighted[i] = weights[i] * cell[i];
          chance += reweighted[i];
        }
        if (chance > 1e-9) {
          expected += chance * spread(perDraw, reweighted, chance);
        }
      }
      return expected;
    }

    /**
     * The likeliest outcome: the pass by which the event is met, or one more than was to be read
     * where it is not.
     */
    public int likeliest() {
      int best = 0;
      for (int c = 1; c < cells.length; c++) {
        if (WeightedDraws.mean(cells[c], weights) > WeightedDraws.mean(cells[best], weights)) {
          best = c;
        }
      }
      return best + 1;
    }

    /** Takes an outcome, as {@link #likeliest} numbers them, for seen from now on. */
    public void assume(int outcome) {
      double total = 0;
      double[] cell = cells[outcome - 1];
      for (int i = 0; i < weights.length; i++) {
        weights[i] *= cell[i];
        total += weights[i];
      }
      if (!(total > 0)) {
        throw new IllegalArgumentException("An outcome can be assumed only if it is possible.");
      }
      for (int i = 0; i < weights.length; i++) {
        weights[i] /= total;
      }
      double with = outcome == cells.length ? Double.POSITIVE_INFINITY : Math.log(outcome);
      Seen seen = new Seen(lnDose, lnIntensity, AS_ASKED, Math.log(outcome - 1.0), with);
      board.ifPresent(b -> boards.put(b, sharpened(shift(board), seen)));
    }
  }
}
