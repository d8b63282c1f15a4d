/**
 * Logistic regression with a random intercept per group.
 *
 * <h2>Decisions</h2>
 *
 * <p>The intercepts are integrated out on an evenly spaced grid that does not move. Rejected:
 * Laplace's approximation and adaptive Gauss-Hermite quadrature, which expect each group's
 * integrand to look like a normal density. Where groups are a handful of trials and differ much it
 * looks like a step: in the removal case of the reference folder {@code
 * random-intercept-integrated} the log likelihood of 25 adaptive points is off by 0.26 at a
 * standard deviation of 16, which makes a maximum where there is none, and Laplace's is off by
 * 0.92.
 */
package charline.stat.mixed;
