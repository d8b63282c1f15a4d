package charline.exposure;

import charline.quantity.Invariant;

/**
 * Power as the person gave it: a share of the rig's rating, or watts on the work.
 *
 * @param value percent (above 0, up to 100) or watts (above 0)
 * @param unit which of the two
 */
public record PowerSetting(double value, Unit unit) {
  /** The two ways to give power. */
  public enum Unit {
    PERCENT("%"),
    WATTS("W");

    private final String symbol;

    Unit(String symbol) {
      this.symbol = symbol;
    }

    public String symbol() {
      return symbol;
    }
  }

  public PowerSetting {
    Invariant.positive("Power", value, unit.symbol());
    if (unit == Unit.PERCENT) {
      Invariant.within("Power", value, 0, 100, "%");
    }
  }

  public static PowerSetting percent(double percent) {
    return new PowerSetting(percent, Unit.PERCENT);
  }

  public static PowerSetting watts(double watts) {
    return new PowerSetting(watts, Unit.WATTS);
  }

  /**
   * Power delivered to the work, in W.
   *
   * @param curve power over the setting; it does not touch power given in watts, which is taken as
   *     delivered
   */
  public double deliveredWatts(PowerCurve curve) {
    return unit == Unit.WATTS ? value : curve.watts(value);
  }
}
