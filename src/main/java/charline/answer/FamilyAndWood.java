package charline.answer;

import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A coating family and a wood in the log's own words.
 *
 * @param family coating family
 * @param wood wood, or {@link Stratum#ANY_WOOD}
 */
public record FamilyAndWood(String family, String wood) {
  private static final Set<String> BETWEEN = Set.of("over", "on");

  /** Whether the woods are pooled. */
  public boolean anyWood() {
    return wood.equals(Stratum.ANY_WOOD);
  }

  /** Whether trials of a stratum are meant. */
  boolean covers(Stratum stratum) {
    return stratum.family().equals(family) && (anyWood() || stratum.wood().equals(wood));
  }

  /**
   * Reads {@code latex pine}, {@code latex over pine}, {@code clear coat longleaf pine}.
   *
   * @throws Refusal naming the word that the log does not know, with the nearest
   */
  public static FamilyAndWood read(List<String> typed, Logbook log) {
    List<String> words = typed.stream().filter(word -> !BETWEEN.contains(word)).toList();
    if (words.size() < 2) {
      throw Refusal.usage("Name a coating family and a wood, such as `latex pine`.");
    }
    for (int cut = words.size() - 1; cut > 1; cut--) {
      Optional<FamilyAndWood> both = at(words, cut, log);
      if (both.isPresent()) {
        return both.get();
      }
    }
    return new FamilyAndWood(
        log.family(words.get(0)), wood(String.join(" ", words.subList(1, words.size())), log));
  }

  private static Optional<FamilyAndWood> at(List<String> words, int cut, Logbook log) {
    try {
      return Optional.of(
          new FamilyAndWood(
              log.family(String.join(" ", words.subList(0, cut))),
              wood(String.join(" ", words.subList(cut, words.size())), log)));
    } catch (Refusal e) {
      return Optional.empty();
    }
  }

  private static String wood(String word, Logbook log) {
    return word.equalsIgnoreCase(Stratum.ANY_WOOD) ? Stratum.ANY_WOOD : log.wood(word);
  }
}
