package charline.window;

/**
 * One place on the map of power against speed.
 *
 * @param powerPercent power on the dial
 * @param speedMillimetresPerSecond speed
 * @param tried inside what was tried (dose, intensity, passes, leverage)
 * @param borneOut as many patches of the same way came through here as a window asks for
 * @param keepsChar the char promise holds here with the asked confidence
 * @param keepsClearing the clearing promise holds here with the asked confidence
 */
public record MapCell(
    double powerPercent,
    double speedMillimetresPerSecond,
    boolean tried,
    boolean borneOut,
    boolean keepsChar,
    boolean keepsClearing) {}
