package charline.web.entry;

import charline.quantity.Measure.Quantity;

/** What can be set at the bench, each with its unit and the step of its buttons. */
public enum Knob {
  POWER("power", "Power", "%", Quantity.SHARE, "5"),
  HAND("hand", "Hand speed", "mm/s", Quantity.SPEED, "1"),
  WIDTH("width", "Scan width", "mm", Quantity.LENGTH, "5"),
  SCAN("scan", "Scan speed", "mm/s", Quantity.SPEED, "500"),
  SPACING("spacing", "Line spacing", "mm", Quantity.LENGTH, "0.01"),
  AREA("area", "Marked area", "cm²", Quantity.AREA, "5"),
  SECONDS("seconds", "Time per pass", "s", Quantity.TIME, "0.5"),
  SPOT("spot", "Spot diameter", "mm", Quantity.LENGTH, "0.05"),
  REP("rep", "Repetition rate", "kHz", Quantity.RATE, "5"),
  PULSE("pulse", "Pulse duration", "ns", Quantity.PULSE_DURATION, "10"),
  PATCH("patch", "Patch size", "cm²", Quantity.AREA, "5");

  private final String key;
  private final String label;
  private final String unit;
  private final Quantity quantity;
  private final String step;

  Knob(String key, String label, String unit, Quantity quantity, String step) {
    this.key = key;
    this.label = label;
    this.unit = unit;
    this.quantity = quantity;
    this.step = step;
  }

  /** Name in forms and in the log's record of what was typed. */
  public String key() {
    return key;
  }

  public String label() {
    return label;
  }

  /** Unit of a number given without one, as people write it. */
  public String unit() {
    return unit;
  }

  Quantity quantity() {
    return quantity;
  }

  /** What one tap on a step button adds. */
  public String step() {
    return step;
  }
}
