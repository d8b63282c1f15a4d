package charline.web.entry;

import charline.exposure.DoseForm;
import charline.exposure.LineScan;
import charline.exposure.TimedArea;
import charline.refusal.Refusal;

/** How a person knows how fast the light was spread. */
public enum Form {
  HAND("hand", "Hand speed", Knob.HAND, Knob.WIDTH),
  TIMED("timed", "Stopwatch", Knob.SECONDS, Knob.AREA),
  SCAN("scan", "Scanner", Knob.SCAN, Knob.SPACING);

  private final String key;
  private final String label;
  private final Knob pace;
  private final Knob across;

  Form(String key, String label, Knob pace, Knob across) {
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

  static Form of(DoseForm form) {
    return form instanceof LineScan ? SCAN : form instanceof TimedArea ? TIMED : HAND;
  }

  static Form ofKey(String key) {
    for (Form form : values()) {
      if (form.key.equals(key)) {
        return form;
      }
    }
    throw Refusal.usage("The speed is given as hand, timed or scan, not \"" + key + "\".");
  }
}
