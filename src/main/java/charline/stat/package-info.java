/**
 * Statistics on arrays, sorted by what they do: optimisation, sampling, quadrature, distributions,
 * intervals, linear and binomial regression, a random intercept, survival times, inverse
 * estimation, checks of a fit, and meta-analysis. Arrays and plain records in, records out; no type
 * of a numerical library in any signature.
 *
 * <p>This package must not know of lasers, wood, patches, databases or screens.
 */
package charline.stat;
