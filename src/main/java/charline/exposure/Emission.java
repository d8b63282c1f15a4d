package charline.exposure;

import charline.refusal.Refusal;

/** How the source gives its light. Trials of one kind say nothing about the other. */
public enum Emission {
  /** Short pulses at a repetition rate; intensity is the mean fluence of a pulse in J/cm². */
  PULSED("pulsed", "J/cm2"),
  /** Continuous wave; intensity is the mean irradiance of the spot in W/cm². */
  CONTINUOUS("cw", "W/cm2");

  private final String word;
  private final String intensityUnit;

  Emission(String word, String intensityUnit) {
    this.word = word;
    this.intensityUnit = intensityUnit;
  }

  /** The word used in logs and on the command line: {@code pulsed} or {@code cw}. */
  public String word() {
    return word;
  }

  /** Unit of {@link Exposure#intensity()} for this kind of source. */
  public String intensityUnit() {
    return intensityUnit;
  }

  /**
   * The kind a word names.
   *
   * @throws Refusal if it names neither
   */
  public static Emission ofWord(String word) {
    for (Emission e : values()) {
      if (e.word.equalsIgnoreCase(word.strip())) {
        return e;
      }
    }
    throw Refusal.usage("Kind of laser must be pulsed or cw, not \"" + word + "\".");
  }
}
