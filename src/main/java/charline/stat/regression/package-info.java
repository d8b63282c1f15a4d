/**
 * Binomial regression by maximum likelihood or Firth's penalised likelihood.
 *
 * <p>A fit is a type of its own, and so is the lack of one: separation and failure to converge
 * cannot be read as numbers.
 */
package charline.stat.regression;
