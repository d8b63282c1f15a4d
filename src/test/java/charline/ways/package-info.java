/** Simulated shops that work in two ways: is a difference found, and is none invented? */
package charline.ways;
