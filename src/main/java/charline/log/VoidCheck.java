package charline.log;

import charline.trial.PowerCheck;

/**
 * A power check that counts no more.
 *
 * @param check what it said
 * @param why the reason given
 */
public record VoidCheck(PowerCheck check, String why) {}
