/**
 * The classical view of the same trials: logistic regression by maximum likelihood or Firth's
 * penalised likelihood, without priors and without board spread, and the ablation law by least
 * squares.
 *
 * <p>This package must not know of the log, of files or of screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>The classical view keeps the factor that joins a patch's last reading without the event and
 * its first reading with it. Rejected: the two rows as if independent (over 60 simulated series of
 * 24 patches the 5 % dose came out at half of the true one); one row per patch at its last reading,
 * which is chosen by its outcome. Firth's penalty remains that of the rows.
 *
 * <p>The ablation law is fitted to depth per pulse, one depth per patch, while residue is left.
 * Rejected: depth per pass, which changes with hand speed at one fluence; every reading of a patch,
 * which are not independent; depths of coats that were through.
 */
package charline.model.classical;
