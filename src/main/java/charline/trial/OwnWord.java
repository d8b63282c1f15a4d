package charline.trial;

import charline.refusal.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A wood or a coating family that a person adds to the log's vocabulary.
 *
 * @param id permanent identity
 * @param name lower case
 * @param aliases other words for the same, lower case
 * @param like a known word of the same sort: class and cautions are the same
 */
public record OwnWord(UUID id, String name, List<String> aliases, String like) {
  private static final Pattern FOREIGN = Pattern.compile("[^\\p{L}\\p{N} '\u2019./()-]");

  /** Words with a meaning of their own in questions, coats and sheets. */
  private static final Set<String> TAKEN =
      Set.of(
          "any", "all", "own", "over", "on", "under", "with", "without", "and", "or", "not", "by",
          "clean", "tint", "char", "residue", "soot", "pale", "mid", "dark", "solid", "last");

  public OwnWord {
    aliases = List.copyOf(aliases);
  }

  /**
   * A word as it is kept: lower case, single blanks.
   *
   * @param sort what it names, "wood" or "family"
   * @throws Refusal if it could not be told from other words
   */
  public static String checked(String sort, String typed) {
    String word = GivenName.checked(sort, typed).replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    Matcher foreign = FOREIGN.matcher(word);
    if (foreign.find()) {
      throw Refusal.usage(
          "The name of a %s may have letters, digits, blanks, hyphens and apostrophes, not \"%s\"; choose another."
              .formatted(sort, foreign.group()));
    }
    if (word.chars().noneMatch(Character::isLetter)) {
      throw Refusal.usage(
          "The name of a %s must have a letter, and \"%s\" has none; choose another."
              .formatted(sort, word));
    }
    if (TAKEN.contains(word)) {
      throw Refusal.usage(
          "The word \"%s\" has a meaning of its own in questions; choose another.".formatted(word));
    }
    return word;
  }
}
