package charline.trial;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.TimedArea;
import charline.refusal.Refusal;
import java.util.List;

/** The three pairs of knobs that say how fast the light was spread; a patch has one of them. */
public enum DoseKnobs {
  HAND("hand", "Hand speed", Knob.HAND, Knob.WIDTH),
  TIMED("timed", "Stopwatch", Knob.SECONDS, Knob.AREA),
  SCAN("scan", "Scanner", Knob.SCAN, Knob.SPACING);

  private final String key;
  private final String label;
  private final Knob pace;
  private final Knob across;

  DoseKnobs(String key, String label, Knob pace, Knob across) {
    this.key = key;
    this.label = label;
    this.pace = pace;
    this.across = across;
  }

  public String key() {
    return key;
  }

  public String label() {
    return label;
  }

  /** The knob that changes. */
  public Knob pace() {
    return pace;
  }

  /** The knob that goes with it and mostly stays. */
  public Knob across() {
    return across;
  }

  /** Both, the pace first. */
  public List<Knob> both() {
    return List.of(pace, across);
  }

  /** The dose form of these two numbers, each in its knob's unit. */
  public DoseForm form(double ofPace, double ofAcross) {
    return switch (this) {
      case HAND -> new HandPass(ofAcross, ofPace);
      case TIMED -> new TimedArea(ofAcross, ofPace);
      case SCAN -> new LineScan(ofPace, ofAcross);
    };
  }

  /** The pair that a dose form is made of. */
  public static DoseKnobs of(DoseForm form) {
    return form instanceof LineScan ? SCAN : form instanceof TimedArea ? TIMED : HAND;
  }

  /** The pair of that name. */
  public static DoseKnobs ofKey(String key) {
    for (DoseKnobs pair : values()) {
      if (pair.key.equals(key)) {
        return pair;
      }
    }
    throw Refusal.usage("The speed is given as hand, timed or scan, not \"" + key + "\".");
  }
}
