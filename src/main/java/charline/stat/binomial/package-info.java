/** Counts out of trials without covariates. */
package charline.stat.binomial;
