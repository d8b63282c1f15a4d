/**
 * Binomial regression by maximum likelihood or Firth's penalised likelihood.
 *
 * <p>A fit is a type of its own, and so is the lack of one: separation and failure to converge
 * cannot be read as numbers.
 *
 * <h2>Decisions</h2>
 *
 * <p>A proof comes before a search. The fit of a twentieth of a large sample's rows proves that its
 * outcomes overlap, and a penalised profile proves that its maximum is the highest in its plane.
 * Where a proof fails, the linear programme and the many starts decide. Rejected: searching always,
 * which takes ten times as long.
 */
package charline.stat.regression;
