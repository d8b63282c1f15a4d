package charline.model;

import charline.stat.sampling.DriftingQuantile;
import charline.stat.sampling.ParetoSmoothing;
import charline.stat.sampling.WeightedDraws;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;

/**
 * Weighted draws of one event's parameters, and what follows from them for a board not seen yet, or
 * for a piece with patches of its own.
 *
 * <p>On a board the event's chance at a setting is the mean over what its shift may be, E Λ((m - u)
 * / σ) with m = ln D + φ ln(F/F0) + ψ ln n - τ. It rises with m, so each draw has one margin at
 * which the chance is a given number, and with it one dose: limits on risk become limits on dose
 * without any further integral.
 */
public final class Posterior {
  private final DrawColumns draws;

  /** The board that chances and doses are for. */
  private final BoardShift board;

  /**
   * Takes draws in the coordinates of {@link PassesToEvent}.
   *
   * @param prior whose least φ and ψ the coordinates begin at
   * @param way values of the shifts of the way that this posterior is to be for: they go into τ
   */
  Posterior(WeightedDraws draws, double lnReference, Prior prior, double[] way) {
    this(
        new Parts(
            DrawColumns.of(draws, lnReference, prior, way.length).moved(way), Optional.empty()));
  }

  private Posterior(DrawColumns draws, BoardShift board) {
    this.draws = draws;
    this.board = board;
  }

  /**
   * All that a posterior is made of, so that it can be kept and made again, equal to the last bit.
   *
   * @param piece what is known of the piece that it is for; empty where it is for a new board
   */
  public record Parts(DrawColumns draws, Optional<PieceShift.Parts> piece) {
    /** The posterior of these parts. */
    public Posterior whole() {
      return new Posterior(this);
    }
  }

  /** What this is made of; the arrays are its own and must not be changed. */
  public Parts parts() {
    return new Parts(
        draws, board instanceof PieceShift piece ? Optional.of(piece.parts()) : Optional.empty());
  }

  private Posterior(Parts parts) {
    this(
        parts.draws(),
        parts
            .piece()
            .<BoardShift>map(
                piece -> PieceShift.of(parts.draws().sigma(), parts.draws().psi(), piece))
            .orElseGet(
                () ->
                    new NewBoard(
                        parts.draws().omega(), parts.draws().sigma(), parts.draws().psi())));
  }

  /** The same posterior in {@code count} equally weighted draws. */
  public Posterior thinned(int count) {
    int[] some = resample(count);
    return new Posterior(draws.chosen(some), board.chosen(some));
  }

  private static double[] exp(double[] logs) {
    return Arrays.stream(logs).map(Math::exp).toArray();
  }

  public int size() {
    return draws.size();
  }

  /** Kish's effective number of draws. */
  double effectiveDraws() {
    return new WeightedDraws(new double[draws.size()][0], draws.weights()).effectiveSize();
  }

  /** By how much the even-chance dose of one way of working lies above that of another, in ln. */
  Estimate shiftEstimate(double[] way) {
    return estimate(perDraw(i -> wayShift(i, way)));
  }

  /**
   * The same draws for another way of working.
   *
   * @param way values of its shifts from those of the way that this is for
   */
  Posterior moved(double[] way) {
    return new Posterior(draws.moved(way), board);
  }

  /**
   * By how much the even-chance dose of one way of working lies above that of another, in ln dose.
   *
   * @param way values of its shifts from those of the other; none where all are one
   */
  double wayShift(int draw, double[] way) {
    return draws.wayShift(draw, way);
  }

  public Estimate tau() {
    return estimate(draws.tau());
  }

  public Estimate phi() {
    return estimate(draws.phi());
  }

  public Estimate psi() {
    return estimate(draws.psi());
  }

  public Estimate sigma() {
    return estimate(draws.sigma());
  }

  public Estimate omega() {
    return estimate(draws.omega());
  }

  /** One-pass dose with an even chance on an average board at the reference intensity, J/cm². */
  public Estimate evenDoseJoulesPerCm2() {
    return estimate(exp(draws.tau()));
  }

  private Estimate estimate(double[] values) {
    return new Estimate(quantile(values, 0.5), quantile(values, 0.05), quantile(values, 0.95));
  }

  /**
   * Mean and variance of a quantity.
   *
   * @param mean posterior mean
   * @param variance posterior variance, 0 or more
   */
  public record Moments(double mean, double variance) {
    public Moments plus(Moments other) {
      return new Moments(mean + other.mean, variance + other.variance);
    }
  }

  /**
   * The same posterior once a piece's own patches are known, for that piece: the draws weighted
   * anew by the chance of what its patches showed, the piece's shift integrated out given them.
   *
   * @param patches the event's readings on the piece, one or more; boards are not looked at
   * @param waySteps values of the shifts of each, from those of the way that this is for
   */
  OnPiece onPiece(List<CensoredPasses> patches, List<double[]> waySteps) {
    PieceShift piece = PieceShift.of(this, patches, waySteps);
    double[] logWeights = perDraw(i -> Math.log(draws.weights()[i]) + piece.logEvidence(i));
    ParetoSmoothing smoothed = ParetoSmoothing.of(logWeights);
    Posterior known = new Posterior(draws.weighted(smoothed.weights()), piece);
    return new OnPiece(known, smoothed.kHat(), piece.shift(smoothed.weights()));
  }

  /**
   * The same posterior for a piece whose patches it was fitted to already: only the piece's shift
   * is conditioned on them.
   */
  OnPiece givenShiftOf(List<CensoredPasses> patches, List<double[]> waySteps) {
    PieceShift piece = PieceShift.of(this, patches, waySteps);
    return new OnPiece(new Posterior(draws, piece), 0, piece.shift(draws.weights()));
  }

  /**
   * A posterior for a piece.
   *
   * @param kHat Pareto k-hat of the weights that the piece's patches gave
   * @param shift by how much the piece takes more than the average board, in ln dose
   */
  record OnPiece(Posterior posterior, double kHat, Estimate shift) {}

  double omega(int draw) {
    return draws.omega()[draw];
  }

  double sigma(int draw) {
    return draws.sigma()[draw];
  }

  /** Moments of τ as it is at another intensity, φ, ψ and ln σ. */
  public Moments[] moments(double lnIntensity) {
    return new Moments[] {
      moments(perDraw(i -> draws.tau()[i] - draws.phi()[i] * (lnIntensity - draws.lnReference()))),
      moments(draws.phi()),
      moments(draws.psi()),
      moments(perDraw(i -> Math.log(draws.sigma()[i])))
    };
  }

  private Moments moments(double[] values) {
    double mean = mean(values);
    return new Moments(mean, mean(perDraw(i -> (values[i] - mean) * (values[i] - mean))));
  }

  /** A function of the spread between boards, one per draw. */
  double[] ofSpread(DoubleUnaryOperator of) {
    return perDraw(i -> of.applyAsDouble(draws.omega()[i]));
  }

  /** Posterior mean of a quantity given per draw. */
  public double mean(double[] perDraw) {
    return WeightedDraws.mean(perDraw, draws.weights());
  }

  /** Posterior quantile of a quantity given per draw. */
  public double quantile(double[] perDraw, double probability) {
    return WeightedDraws.quantile(perDraw, draws.weights(), probability);
  }

  /** Posterior quantiles of a quantity that is given per draw at one place after another. */
  DriftingQuantile drifting(double probability) {
    return new DriftingQuantile(draws.weights(), probability);
  }

  /**
   * The event's chance on the board that this is for, one per draw.
   *
   * @param doseJoulesPerCm2 dose per pass
   * @param intensity fluence (J/cm²) or irradiance (W/cm²)
   * @param passes number of passes
   */
  public double[] newBoardChance(double doseJoulesPerCm2, double intensity, int passes) {
    return newBoardChance(doseJoulesPerCm2, intensity, passes, 0);
  }

  /**
   * The event's chance on a new board over an area of which a share is a {@link Seam}, one per
   * draw.
   *
   * @param doseJoulesPerCm2 dose per pass
   * @param intensity fluence (J/cm²) or irradiance (W/cm²)
   * @param passes number of passes of one stroke
   * @param seamShare share of the area that gets twice the passes, 0 to 1
   */
  public double[] newBoardChance(
      double doseJoulesPerCm2, double intensity, int passes, double seamShare) {
    double lnDose = Math.log(doseJoulesPerCm2);
    double f = Math.log(intensity) - draws.lnReference();
    double lnPasses = Math.log(passes);
    return perDraw(
        i ->
            board.chance(
                i,
                lnDose + draws.phi()[i] * f + draws.psi()[i] * lnPasses - draws.tau()[i],
                seamShare));
  }

  /**
   * The doses at which the event's chance on that board is a given one.
   *
   * @param chance inside (0, 1)
   */
  public DoseLimit doseLimit(double chance) {
    return doseLimit(chance, 0);
  }

  /**
   * The doses at which the event's chance on that board is a given one, over an area of which a
   * share is a {@link Seam}.
   *
   * @param chance inside (0, 1)
   * @param seamShare share of the area that gets twice the passes, 0 to 1
   */
  public DoseLimit doseLimit(double chance, double seamShare) {
    return new DoseLimit(this, perDraw(i -> board.margin(i, chance, seamShare)));
  }

  double lnDose(int draw, double offset, double lnIntensity, double lnPasses) {
    return draws.tau()[draw]
        + offset
        - draws.phi()[draw] * (lnIntensity - draws.lnReference())
        - draws.psi()[draw] * lnPasses;
  }

  /**
   * (m - u) / σ of a patch on a board whose shift is {@code node} standard deviations; its logistic
   * is the event's chance.
   */
  double score(int draw, double node, double lnDose, double lnIntensity, double lnPasses) {
    return (lnDose
            + draws.phi()[draw] * (lnIntensity - draws.lnReference())
            + draws.psi()[draw] * lnPasses
            - draws.tau()[draw]
            - draws.omega()[draw] * node)
        / draws.sigma()[draw];
  }

  double psi(int draw) {
    return draws.psi()[draw];
  }

  double[] perDraw(IntToDoubleFunction value) {
    double[] values = new double[draws.size()];
    Arrays.setAll(values, value);
    return values;
  }

  /** Draws taken as often as they weigh, so that each counts the same. */
  public List<Draw> alike(int count) {
    return Arrays.stream(resample(count)).mapToObj(draws::draw).toList();
  }

  /** Indices of {@code count} equally weighted draws. */
  int[] resample(int count) {
    return new WeightedDraws(new double[draws.size()][0], draws.weights()).resample(count);
  }
}
