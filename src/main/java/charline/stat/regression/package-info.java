/**
 * Regression: binomial outcomes with limits that hold for few rows, a random intercept, a straight
 * line and where it meets zero, and curves by least squares.
 *
 * <p>A fit is a type of its own, and so is the lack of one: separation and failure to converge
 * cannot be read as numbers.
 */
package charline.stat.regression;
