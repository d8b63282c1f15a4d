/**
 * Newton's method uphill, functions with two derivatives, and whether a likelihood has a maximum.
 */
package charline.stat.optimisation;
