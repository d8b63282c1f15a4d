/**
 * From a fit back to its covariates: the dose at a given risk, and limits by the profile
 * likelihood.
 */
package charline.stat.inverse;
