package charline.model;

import charline.trial.Stratum;

/**
 * Other trials that a prior was borrowed from.
 *
 * @param stratum what they are
 * @param patches how many
 * @param near whether they are of the same kind: the same coating family or, for char, the same
 *     wood
 */
public record Lender(Stratum stratum, int patches, boolean near) {}
