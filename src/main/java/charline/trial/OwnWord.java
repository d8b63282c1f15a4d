package charline.trial;

import java.util.List;
import java.util.UUID;

/**
 * A wood or a coating family that a person adds to the log's vocabulary.
 *
 * @param id permanent identity
 * @param name lower case
 * @param aliases other words for the same, lower case
 * @param like a known word of the same sort: class and cautions are the same
 */
public record OwnWord(UUID id, String name, List<String> aliases, String like) {
  public OwnWord {
    aliases = List.copyOf(aliases);
  }
}
