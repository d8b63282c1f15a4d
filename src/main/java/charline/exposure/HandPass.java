package charline.exposure;

import charline.quantity.Invariant;

/**
 * A hand-held pass: the head scans a width while the hand moves it along. Independent of scan
 * frequency, spot and repetition rate.
 *
 * @param scanWidthMillimetres width swept by the head, W, above 0
 * @param handSpeedMillimetresPerSecond travel of the head along the work, u, above 0
 */
public record HandPass(double scanWidthMillimetres, double handSpeedMillimetresPerSecond)
    implements DoseForm {
  public HandPass {
    Invariant.positive("Scan width", scanWidthMillimetres, "mm");
    Invariant.positive("Hand speed", handSpeedMillimetresPerSecond, "mm/s");
  }

  /** W u. */
  @Override
  public AreaRate areaRate() {
    return new AreaRate(scanWidthMillimetres * handSpeedMillimetresPerSecond / 100);
  }

  /** The lines this pass lays down with a given scan figure, spacing being u / lines per second. */
  public LineScan linesOf(ScanFigure figure) {
    return new LineScan(
        figure.meanSpotSpeedMillimetresPerSecond(),
        handSpeedMillimetresPerSecond / figure.linesPerSecond());
  }
}
