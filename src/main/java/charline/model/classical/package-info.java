/**
 * The classical view of the same trials: logistic regression by maximum likelihood or Firth's
 * penalised likelihood, without priors and without board spread, and the ablation law by least
 * squares.
 *
 * <p>This package must not know of the log, of files or of screens.
 */
package charline.model.classical;
