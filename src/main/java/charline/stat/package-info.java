/**
 * Statistics on arrays: optimisation, quasi-random importance sampling, regression and intervals.
 * Arrays and plain records in, records out.
 *
 * <p>This package must not know of lasers, wood, patches, databases or screens.
 */
package charline.stat;
