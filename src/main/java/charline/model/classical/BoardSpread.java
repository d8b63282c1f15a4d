package charline.model.classical;

import java.util.OptionalDouble;

/**
 * How much boards differ, as a random intercept has it.
 *
 * @param boards that were tried
 * @param logOdds standard deviation between boards of the log odds; 0 where they differ no more
 *     than patches of one board do
 * @param limits of it, by its logarithm's standard error; open where it is 0
 * @param omega the same as a standard deviation of ln dose, omega of the passes-to-event model;
 *     empty where the chance does not rise with dose
 */
public record BoardSpread(int boards, double logOdds, Limits limits, OptionalDouble omega) {}
