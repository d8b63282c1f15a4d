package charline.window;

/**
 * One setting with what the models expect of it on a new board.
 *
 * @param powerPercent power on the dial
 * @param powerWatts delivered power
 * @param speedMillimetresPerSecond hand or scan speed, as the bench's knob says
 * @param passes passes
 * @param doseJoulesPerCm2 dose of one pass
 * @param intensity fluence in J/cm² (pulsed) or irradiance in W/cm² (continuous)
 * @param charRiskMean char risk per patch-sized area, averaged over the posterior
 * @param charRiskUpper one-sided upper bound of that risk at the asked confidence
 * @param clearChanceMean clearing chance, averaged over the posterior
 * @param clearChanceLower one-sided lower bound of that chance at the asked confidence
 * @param netAreaRateSquareCentimetresPerMinute area rate over passes
 */
public record Forecast(
    double powerPercent,
    double powerWatts,
    double speedMillimetresPerSecond,
    int passes,
    double doseJoulesPerCm2,
    double intensity,
    double charRiskMean,
    double charRiskUpper,
    double clearChanceMean,
    double clearChanceLower,
    double netAreaRateSquareCentimetresPerMinute) {}
