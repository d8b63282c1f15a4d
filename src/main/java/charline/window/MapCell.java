package charline.window;

/**
 * One place on the map of power against speed.
 *
 * @param powerPercent power on the dial
 * @param speedMillimetresPerSecond speed
 * @param tried inside what was tried (dose, intensity, passes, leverage)
 * @param charRiskUpper upper bound of the char risk at the asked confidence
 * @param clearChanceLower lower bound of the clearing chance at the asked confidence
 */
public record MapCell(
    double powerPercent,
    double speedMillimetresPerSecond,
    boolean tried,
    double charRiskUpper,
    double clearChanceLower) {}
