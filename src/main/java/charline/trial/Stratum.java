package charline.trial;

import charline.exposure.Emission;

/**
 * Trials that may be analysed together: one coating family on one wood with one kind of light.
 *
 * @param family coating family
 * @param wood wood, or {@link #ANY_WOOD} where the woods of a family are pooled on request
 * @param emission pulsed or continuous
 * @param wavelengthNanometres wavelength, rounded to whole nanometres
 */
public record Stratum(String family, String wood, Emission emission, int wavelengthNanometres) {
  /** All woods together. */
  public static final String ANY_WOOD = "any";

  /** The stratum a patch belongs to. */
  public static Stratum of(Patch patch) {
    return new Stratum(
        patch.finish().family(),
        patch.board().wood(),
        patch.rig().emission(),
        (int) Math.round(patch.rig().wavelengthNanometres()));
  }

  /** The same with all woods pooled. */
  public Stratum overAllWoods() {
    return new Stratum(family, ANY_WOOD, emission, wavelengthNanometres);
  }

  /** True if both were burned by one kind of light. */
  public boolean sameLight(Stratum other) {
    return emission == other.emission && wavelengthNanometres == other.wavelengthNanometres;
  }

  /** "latex on pine, pulsed 1064 nm". */
  public String words() {
    return "%s on %s, %s %d nm"
        .formatted(
            family,
            wood.equals(ANY_WOOD) ? "any wood" : wood,
            emission.word(),
            wavelengthNanometres);
  }
}
