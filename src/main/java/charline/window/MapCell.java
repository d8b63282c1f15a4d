package charline.window;

/**
 * One place on the map of power against speed.
 *
 * @param powerPercent power on the dial
 * @param speedMillimetresPerSecond speed
 * @param tried inside what was tried (dose, intensity, passes, leverage)
 * @param keepsChar the char promise holds here with the asked confidence
 * @param keepsClearing the clearing promise holds here with the asked confidence
 */
public record MapCell(
    double powerPercent,
    double speedMillimetresPerSecond,
    boolean tried,
    boolean keepsChar,
    boolean keepsClearing) {}
