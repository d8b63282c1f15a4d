package charline.trial;

import charline.exposure.Emission;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/**
 * Trials that may be analysed together: one coating family on one wood with one kind of light.
 *
 * @param family coating family
 * @param wood wood; {@link #ANY_WOOD} where all woods are pooled on request, and what {@link
 *     #pooled} gives where several are
 * @param emission pulsed or continuous
 * @param wavelengthNanometres wavelength, rounded to whole nanometres
 */
public record Stratum(String family, String wood, Emission emission, int wavelengthNanometres) {
  /** All woods together. */
  public static final String ANY_WOOD = "any";

  private static final String AND = " + ";

  /** Several woods as one: "northern red oak + oak", whatever their order. */
  public static String pooled(Collection<String> woods) {
    return String.join(AND, new TreeSet<>(woods));
  }

  /** The woods that one word stands for; none where it is {@link #ANY_WOOD}. */
  public static List<String> woods(String wood) {
    return wood.equals(ANY_WOOD) ? List.of() : List.of(wood.split(" \\+ "));
  }

  /** Whether one word for woods, which may pool several, stands for a wood too. */
  public static boolean covers(String woods, String wood) {
    return woods.equals(ANY_WOOD) || woods(woods).contains(wood);
  }

  /** The stratum a patch belongs to. */
  public static Stratum of(Patch patch) {
    return new Stratum(
        patch.finish().family(),
        patch.board().wood(),
        patch.rig().emission(),
        (int) Math.round(patch.rig().wavelengthNanometres()));
  }

  /** Whether several woods are pooled. */
  public boolean poolsWoods() {
    return wood.equals(ANY_WOOD) || wood.contains(AND);
  }

  /** The woods by name; none where all are pooled. */
  public List<String> woods() {
    return woods(wood);
  }

  /** Whether trials on a wood are part of it. */
  public boolean covers(String other) {
    return covers(wood, other);
  }

  /** The same over another wood, or over several pooled. */
  public Stratum over(String woods) {
    return new Stratum(family, woods, emission, wavelengthNanometres);
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
