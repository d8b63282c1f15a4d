package charline.model;

/**
 * What of a coat moves the dose that clears it, each with the prior of its weight in ln dose. A
 * term enters the removal model only where the coats of a stratum differ in it.
 */
public enum CoatTerm {
  /**
   * Pale against dark, mid half-way: pale coats take two to four times what dark ones do (common
   * practice, no published source). This prior gives that 60 %, with heavy tails: looks are only a
   * stand-in for what a coat takes up of the beam, and a prior that gave it 85 % held on to its
   * three in simulated trials whose truth was two or six.
   */
  TONE("tone", new HeavyTailedNormal(Math.log(3), 0.35)),

  /**
   * Weight of ln thickness: 1 where every joule lifts its share of the film, less where a film
   * comes off in one piece from below, more where fume and darkened residue shade the rest (own
   * reasoning, no published source).
   */
  THICKNESS("thickness", new HeavyTailedNormal(0.85, 0.3));

  private final String word;
  private final HeavyTailedNormal prior;

  CoatTerm(String word, HeavyTailedNormal prior) {
    this.word = word;
    this.prior = prior;
  }

  public String word() {
    return word;
  }

  /** Prior of the weight. */
  public HeavyTailedNormal prior() {
    return prior;
  }
}
