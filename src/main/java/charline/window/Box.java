package charline.window;

/**
 * A box of knob ranges for one number of passes that keeps what was asked.
 *
 * @param passes number of passes
 * @param powerPercent power on the dial
 * @param speedMillimetresPerSecond hand or scan speed
 * @param start the point with most margin on both sides
 * @param hotCorner most power, least speed: the highest char risk in the box
 * @param coldCorner least power, most speed: the lowest clearing chance in the box
 */
public record Box(
    int passes,
    Range powerPercent,
    Range speedMillimetresPerSecond,
    Forecast start,
    Forecast hotCorner,
    Forecast coldCorner) {
  /** Less room than this, from slowest to fastest, no hand keeps to (common practice). */
  private static final double STEADY_HAND = 1.15;

  /** True if the speed is led by hand and has less room than a steady hand needs. */
  public boolean narrowFor(SpeedKnob knob) {
    return knob.kind() == SpeedKnob.Kind.HAND
        && speedMillimetresPerSecond.high() < STEADY_HAND * speedMillimetresPerSecond.low();
  }
}
