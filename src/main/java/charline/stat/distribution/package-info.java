/** Distributions that the numerical library lacks or rounds. */
package charline.stat.distribution;
