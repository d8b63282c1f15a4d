/**
 * Weighted draws of a distribution known up to a constant: quasi-random importance sampling with
 * Pareto smoothing, and Markov chains.
 */
package charline.stat.sampling;
