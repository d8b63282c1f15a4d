package charline.web.entry;

import charline.quantity.Measure;
import charline.trial.Knob;
import charline.trial.KnobDialect;

/** Knobs as the labels of a form. */
final class LabelDialect implements KnobDialect {
  static final LabelDialect INSTANCE = new LabelDialect();

  private LabelDialect() {}

  @Override
  public String name(Knob knob) {
    return knob.words();
  }

  @Override
  public String powerName() {
    return Knob.POWER_PCT.words();
  }

  @Override
  public double number(Knob knob, String text) {
    return knob.checked(Measure.parse(text, knob.quantity()).value());
  }
}
