package charline.trial;

import java.util.List;
import java.util.Optional;

/**
 * What is known of a coating family beforehand.
 *
 * @param name the log's word for it, lower case
 * @param aliases other words for the same
 * @param usualFilm usual dry film in words, with its unit
 * @param clue how to tell it in the field
 * @param behaviour how it behaves under the beam
 * @param source where that stands
 * @param like the family that it is like, where a person added it
 */
public record FamilyFacts(
    String name,
    List<String> aliases,
    String usualFilm,
    String clue,
    String behaviour,
    String source,
    Optional<String> like) {
  public FamilyFacts {
    aliases = List.copyOf(aliases);
  }
}
