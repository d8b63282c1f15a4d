package charline.trial;

/** One thing to be seen on a patch once it has cooled and been wiped. */
public enum Mark {
  /**
   * Bare wood, nothing left of the finish and nothing done to the wood. Never combined with another
   * mark.
   */
  CLEAN("clean"),
  /** Colour left in the grain. */
  TINT("tint"),
  /** Browned or black wood that stays after cooling and wiping. */
  CHAR("char"),
  /** Finish left on the surface or in the pores. */
  RESIDUE("residue");

  private final String word;

  Mark(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
