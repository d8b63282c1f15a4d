/** Rules for the mean of a function of a standard normal variable. */
package charline.stat.quadrature;
