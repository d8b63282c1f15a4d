package charline.trial;

/** How one way into the program names the knobs and reads their numbers. */
public interface KnobDialect {
  /** The name by which a person finds the knob: an option, a label or a column. */
  String name(Knob knob);

  /** The name of the power, which may be given in two units. */
  String powerName();

  /**
   * The number typed for a knob, in the knob's unit and within its limits.
   *
   * @throws charline.refusal.Refusal in one sentence
   */
  double number(Knob knob, String text);
}
