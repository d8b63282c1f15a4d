/**
 * Distributions that the numerical libraries lack or round, and the normal distribution.
 *
 * <p>The normal distribution goes by Commons Numbers, whose error functions are rational
 * approximations. Rejected: those of Commons Math 3, continued fractions that take some twenty
 * times as long and lose digits in the tails.
 */
package charline.stat.distribution;
