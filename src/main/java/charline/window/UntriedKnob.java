package charline.window;

import charline.trial.Knob;
import java.util.List;

/**
 * A knob at a value that no trial had.
 *
 * @param knob which
 * @param value what it is set to, in the knob's unit
 * @param tried what the trials had: each value of a knob that is set on steps, else the lowest and
 *     the highest; one value where all were alike, none where no trial says
 */
public record UntriedKnob(Knob knob, double value, List<Double> tried) {
  public UntriedKnob {
    tried = List.copyOf(tried);
  }
}
