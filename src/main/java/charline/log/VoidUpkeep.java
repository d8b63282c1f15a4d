package charline.log;

import charline.trial.Upkeep;

/**
 * Upkeep that counts no more.
 *
 * @param upkeep what it said
 * @param why the reason given
 */
public record VoidUpkeep(Upkeep upkeep, String why) {}
