/**
 * Linear models: designs with named columns, their orthogonal basis, coefficients, a straight line
 * and where it meets zero.
 */
package charline.stat.linear;
