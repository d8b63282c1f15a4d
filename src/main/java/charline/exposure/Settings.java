package charline.exposure;

import java.util.Objects;
import java.util.Optional;

/**
 * Everything dialled in for one pass, as the person gave it.
 *
 * @param power share of the rating, or watts
 * @param form how the light was spread
 * @param spot spot on the work
 * @param pulses present for a pulsed source, empty for a continuous one
 */
public record Settings(PowerSetting power, DoseForm form, Spot spot, Optional<Pulses> pulses) {
  private static final double ROUNDING = 1e-9;

  public Settings {
    Objects.requireNonNull(power, "Give the power, in % or W.");
    Objects.requireNonNull(form, "Give the dose in one of its three forms.");
    Objects.requireNonNull(spot, "Give the spot diameter.");
    Objects.requireNonNull(pulses);
  }

  /**
   * True if the lines that a scanner draws lie farther apart than the spot is wide (1/e²), so that
   * they leave stripes. How far apart those of a head led by hand lie is not known here.
   */
  public boolean linesApart() {
    return form instanceof LineScan lines && lines.lineOverlap(spot) < -ROUNDING;
  }

  public Settings withPower(PowerSetting other) {
    return new Settings(other, form, spot, pulses);
  }
}
