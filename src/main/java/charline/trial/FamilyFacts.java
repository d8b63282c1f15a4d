package charline.trial;

import java.util.List;

/**
 * What is known of a coating family beforehand.
 *
 * @param name the log's word for it, lower case
 * @param aliases other words for the same
 * @param usualFilm usual dry film in words, with its unit
 * @param clue how to tell it in the field
 * @param behaviour how it behaves under the beam
 * @param source where that stands
 */
public record FamilyFacts(
    String name,
    List<String> aliases,
    String usualFilm,
    String clue,
    String behaviour,
    String source) {
  public FamilyFacts {
    aliases = List.copyOf(aliases);
  }
}
