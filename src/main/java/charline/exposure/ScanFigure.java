package charline.exposure;

import charline.quantity.Invariant;

/**
 * The path a head's scanner draws, with the mean spot speed it implies. Formulas: kinematics of the
 * figure.
 */
public sealed interface ScanFigure
    permits ScanFigure.OneWayLines, ScanFigure.ToAndFro, ScanFigure.HotRims {
  /** Mean speed of the spot while lit, in mm/s. */
  double meanSpotSpeedMillimetresPerSecond();

  /** Lines (or turns) laid down per second. */
  double linesPerSecond();

  /**
   * A figure whose spot crosses the middle of the track fast and stays at its rims: thin in the
   * middle, hot at the rims. Its place across the track goes as the sine of a steady phase.
   */
  sealed interface HotRims extends ScanFigure permits Sinusoid, Circle {
    /** Width of the track, in mm. */
    double acrossMillimetres();

    /**
     * Dose at a place across the track over the mean dose, 2 / (π √(1 - x²)).
     *
     * @param x place over half the width, inside (-1, 1)
     */
    default double relativeDose(double x) {
      return 2 / (Math.PI * Math.sqrt(1 - x * x));
    }

    /** Share of the time spent in the outer {@code share} of the width, both sides together. */
    default double timeShareInOuter(double share) {
      Invariant.within("Share of the width", share, 0, 1, "");
      return 2 / Math.PI * Math.acos(1 - share);
    }

    /**
     * Mean dose over the mean of the track in a strip along either rim, as wide as the spot: within
     * it the spot smooths what would be without limit at the very rim.
     *
     * @param spot narrower than half the track, else the whole track is one strip
     */
    default double rimDose(Spot spot) {
      double share = Math.min(1, 2 * spot.oneOverESquaredMillimetres() / acrossMillimetres());
      return timeShareInOuter(share) / share;
    }
  }

  /**
   * One-way lines from a rotating polygon.
   *
   * @param widthMillimetres line length
   * @param linesPerSecond lines per second
   * @param litFraction share of each facet's time in which the line is lit, above 0 and up to 1
   */
  record OneWayLines(double widthMillimetres, double linesPerSecond, double litFraction)
      implements ScanFigure {
    public OneWayLines {
      Invariant.positive("Scan width", widthMillimetres, "mm");
      Invariant.positive("Lines per second", linesPerSecond, "/s");
      Invariant.positive("Lit fraction", litFraction, "");
      Invariant.within("Lit fraction", litFraction, 0, 1, "");
    }

    @Override
    public double meanSpotSpeedMillimetresPerSecond() {
      return widthMillimetres * linesPerSecond / litFraction;
    }
  }

  /** A sweep to and fro over one line, two lines a cycle. */
  sealed interface ToAndFro extends ScanFigure permits TriangleSweep, Sinusoid {
    /** Line length. */
    double widthMillimetres();

    /** Full cycles per second. */
    double cyclesPerSecond();

    private static void check(double widthMillimetres, double cyclesPerSecond) {
      Invariant.positive("Scan width", widthMillimetres, "mm");
      Invariant.positive("Scan frequency", cyclesPerSecond, "Hz");
    }

    @Override
    default double meanSpotSpeedMillimetresPerSecond() {
      return 2 * widthMillimetres() * cyclesPerSecond();
    }

    @Override
    default double linesPerSecond() {
      return 2 * cyclesPerSecond();
    }
  }

  /**
   * A sweep to and fro at constant speed.
   *
   * @param widthMillimetres line length
   * @param cyclesPerSecond full cycles, two lines each
   */
  record TriangleSweep(double widthMillimetres, double cyclesPerSecond) implements ToAndFro {
    public TriangleSweep {
      ToAndFro.check(widthMillimetres, cyclesPerSecond);
    }
  }

  /**
   * A sinusoidal sweep (resonant or fast galvanometer).
   *
   * @param widthMillimetres line length
   * @param cyclesPerSecond full cycles, two lines each
   */
  record Sinusoid(double widthMillimetres, double cyclesPerSecond) implements ToAndFro, HotRims {
    public Sinusoid {
      ToAndFro.check(widthMillimetres, cyclesPerSecond);
    }

    /** Speed at mid-line, π W f, in mm/s. */
    public double peakSpeedMillimetresPerSecond() {
      return Math.PI * widthMillimetres * cyclesPerSecond;
    }

    /** Root-mean-square speed, π W f / √2, in mm/s. */
    public double rootMeanSquareSpeedMillimetresPerSecond() {
      return peakSpeedMillimetresPerSecond() / Math.sqrt(2);
    }

    @Override
    public double acrossMillimetres() {
      return widthMillimetres;
    }
  }

  /**
   * A circle carried along by the hand.
   *
   * @param diameterMillimetres diameter of the circle
   * @param turnsPerSecond turns per second
   */
  record Circle(double diameterMillimetres, double turnsPerSecond) implements HotRims {
    public Circle {
      Invariant.positive("Circle diameter", diameterMillimetres, "mm");
      Invariant.positive("Turns per second", turnsPerSecond, "/s");
    }

    @Override
    public double meanSpotSpeedMillimetresPerSecond() {
      return Math.PI * diameterMillimetres * turnsPerSecond;
    }

    @Override
    public double linesPerSecond() {
      return turnsPerSecond;
    }

    /** Travel per turn at a hand speed, in mm. */
    public double advancePerTurnMillimetres(double handSpeedMillimetresPerSecond) {
      return handSpeedMillimetresPerSecond / turnsPerSecond;
    }

    /** The hand pass with the same mean dose: its width is the circle's diameter. */
    public HandPass pass(double handSpeedMillimetresPerSecond) {
      return new HandPass(diameterMillimetres, handSpeedMillimetresPerSecond);
    }

    @Override
    public double acrossMillimetres() {
      return diameterMillimetres;
    }
  }
}
