package charline.cli.command;

import charline.trial.Knob;
import charline.trial.KnobDialect;

/** Knobs as options: {@code --hand 22mm/s}. */
public final class OptionDialect implements KnobDialect {
  public static final OptionDialect INSTANCE = new OptionDialect();

  private OptionDialect() {}

  @Override
  public String name(Knob knob) {
    return knob == Knob.PATCH_AREA ? "--patch-area" : "--" + knob.key();
  }

  @Override
  public String powerName() {
    return "--power";
  }

  @Override
  public double number(Knob knob, String text) {
    return knob == Knob.POWER_PCT
        ? knob.checked(TypedValues.percentage(name(knob), text))
        : knob.checked(TypedValues.measure(name(knob), text, knob.quantity()));
  }
}
