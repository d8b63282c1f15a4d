package charline.model;

/**
 * How much a term of the coat was found to count.
 *
 * @param term tone or thickness
 * @param weight in ln dose: of a pale coat over a dark one, or of ln thickness
 */
public record CoatEffect(CoatTerm term, Estimate weight) {
  /** The weight as a factor on dose: pale over dark, or twice as thick over once. */
  public Estimate factor() {
    double per = term == CoatTerm.TONE ? 1 : Math.log(2);
    return new Estimate(
        Math.exp(per * weight.median()),
        Math.exp(per * weight.low()),
        Math.exp(per * weight.high()));
  }
}
