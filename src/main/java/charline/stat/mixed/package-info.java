/** Logistic regression with a random intercept per group. */
package charline.stat.mixed;
