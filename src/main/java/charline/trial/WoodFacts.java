package charline.trial;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a wood beforehand.
 *
 * @param name the log's word for it, lower case: a species or a generic wood
 * @param aliases other words for the same
 * @param generic the generic wood that a species belongs to, if any
 * @param kind hardwood, softwood or panel
 * @param specificGravity oven-dry mass over volume at 12 % moisture, empty where unsupported
 * @param pores ring, semi-ring, diffuse, none (softwood) or blank where unsupported
 * @param resin in words, or blank
 * @param source where the values stand
 * @param like the wood that it is like, where a person added it
 */
public record WoodFacts(
    String name,
    List<String> aliases,
    Optional<String> generic,
    String kind,
    OptionalDouble specificGravity,
    String pores,
    String resin,
    String source,
    Optional<String> like) {
  public WoodFacts {
    aliases = List.copyOf(aliases);
  }

  /**
   * Density at 12 % moisture in kg/m³: specific gravity x 1120 (USDA Wood Handbook, FPL-GTR-190,
   * chapter 4).
   */
  public OptionalDouble densityKilogramsPerCubicMetre() {
    return specificGravity.isPresent()
        ? OptionalDouble.of(specificGravity.getAsDouble() * 1120)
        : OptionalDouble.empty();
  }
}
