package charline.trial;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** One thing to be seen on a patch once it has cooled and been wiped. */
public enum Mark {
  /**
   * Bare wood, nothing left of the finish and nothing done to the wood. Never combined with another
   * mark.
   */
  CLEAN("clean", "cleaned", "cleanly", "cleared", "ok", "okay"),
  /** Colour left in the grain. */
  TINT("tint", "tinted"),
  /** Browned or black wood that stays after cooling and wiping. */
  CHAR("char", "charred", "burned", "burnt", "scorched"),
  /** Finish left on the surface or in the pores. */
  RESIDUE("residue", "residues");

  private final String word;
  private final List<String> others;

  Mark(String word, String... others) {
    this.word = word;
    this.others = List.of(others);
  }

  /** Other words that mean this mark and nothing else. */
  public List<String> others() {
    return others;
  }

  /** The mark that a word means, in lower case. */
  static Optional<Mark> meant(String word) {
    return Arrays.stream(values())
        .filter(mark -> mark.word.equals(word) || mark.others.contains(word))
        .findFirst();
  }

  public String word() {
    return word;
  }
}
