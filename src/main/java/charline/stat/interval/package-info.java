/**
 * Intervals, either end of which may be open, and two that need no fit: Clopper and Pearson's and
 * Fieller's.
 */
package charline.stat.interval;
