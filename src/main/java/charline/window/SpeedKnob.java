package charline.window;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.quantity.Invariant;

/**
 * The speed a person sets, with what stays fixed across the travel.
 *
 * @param kind hand speed of the head, or spot speed of the scanner
 * @param acrossMillimetres scan width (hand) or line spacing (scan), above 0
 */
public record SpeedKnob(Kind kind, double acrossMillimetres) {
  /** Whose speed it is. */
  public enum Kind {
    HAND("hand speed"),
    SCAN("scan speed");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public SpeedKnob {
    Invariant.positive(kind == Kind.HAND ? "Scan width" : "Line spacing", acrossMillimetres, "mm");
  }

  /** The dose form at a speed in mm/s. */
  public DoseForm at(double speedMillimetresPerSecond) {
    return kind == Kind.HAND
        ? new HandPass(acrossMillimetres, speedMillimetresPerSecond)
        : new LineScan(speedMillimetresPerSecond, acrossMillimetres);
  }

  /** The speed at which this knob covers an area rate, in mm/s. */
  public double speedFor(double squareCentimetresPerSecond) {
    return 100 * squareCentimetresPerSecond / acrossMillimetres;
  }
}
