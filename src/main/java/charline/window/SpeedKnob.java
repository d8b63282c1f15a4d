package charline.window;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.quantity.Invariant;
import charline.trial.Knob;

/**
 * The speed a person sets, with what stays fixed across the travel.
 *
 * @param kind hand speed of the head, or spot speed of the scanner
 * @param acrossMillimetres scan width (hand) or line spacing (scan), above 0
 */
public record SpeedKnob(Kind kind, double acrossMillimetres) {
  /** Whose speed it is. */
  public enum Kind {
    HAND("hand speed", Knob.HAND),
    SCAN("scan speed", Knob.SCAN);

    private final String words;
    private final Knob knob;

    Kind(String words, Knob knob) {
      this.words = words;
      this.knob = knob;
    }

    /** The knob that a person sets it with. */
    public Knob knob() {
      return knob;
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
