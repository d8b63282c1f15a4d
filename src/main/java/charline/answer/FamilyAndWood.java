package charline.answer;

import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A coating family and a wood in the log's own words.
 *
 * @param family coating family
 * @param wood wood, {@link Stratum#ANY_WOOD}, or several woods as {@link Stratum#pooled} writes
 *     them
 */
public record FamilyAndWood(String family, String wood) {
  private static final Set<String> BETWEEN = Set.of("over", "on");

  /** Whether all woods are pooled. */
  public boolean anyWood() {
    return wood.equals(Stratum.ANY_WOOD);
  }

  /** Whether several woods, or all, are pooled. */
  boolean pools() {
    return anyWood() || woods().size() > 1;
  }

  /** The woods by name; none where all are pooled. */
  public List<String> woods() {
    return Stratum.woods(wood);
  }

  /**
   * The same with trials on other woods counted as if it were one wood.
   *
   * @param others words of the log
   * @throws Refusal if all woods are pooled already
   */
  public FamilyAndWood pooledWith(List<String> others) {
    if (others.isEmpty()) {
      return this;
    }
    if (anyWood()) {
      throw Refusal.usage("All woods are pooled already; leave the others out.");
    }
    List<String> all = new ArrayList<>(woods());
    all.addAll(others);
    return new FamilyAndWood(family, Stratum.pooled(all));
  }

  /** Whether trials of a stratum are meant. */
  boolean covers(Stratum stratum) {
    return stratum.family().equals(family) && Stratum.covers(wood, stratum.wood());
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
        log.reference().family(words.get(0)),
        wood(String.join(" ", words.subList(1, words.size())), log));
  }

  private static Optional<FamilyAndWood> at(List<String> words, int cut, Logbook log) {
    try {
      return Optional.of(
          new FamilyAndWood(
              log.reference().family(String.join(" ", words.subList(0, cut))),
              wood(String.join(" ", words.subList(cut, words.size())), log)));
    } catch (Refusal e) {
      return Optional.empty();
    }
  }

  private static String wood(String word, Logbook log) {
    return word.equalsIgnoreCase(Stratum.ANY_WOOD) ? Stratum.ANY_WOOD : log.reference().wood(word);
  }
}
