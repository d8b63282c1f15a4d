package charline.ask.time;

import java.util.Map;
import java.util.OptionalInt;

/** Small numbers in words. */
public final class Counting {
  private static final Map<String, Integer> WORDS =
      Map.ofEntries(
          Map.entry("zero", 0),
          Map.entry("one", 1),
          Map.entry("two", 2),
          Map.entry("three", 3),
          Map.entry("four", 4),
          Map.entry("five", 5),
          Map.entry("six", 6),
          Map.entry("seven", 7),
          Map.entry("eight", 8),
          Map.entry("nine", 9),
          Map.entry("ten", 10),
          Map.entry("eleven", 11),
          Map.entry("twelve", 12),
          Map.entry("fifteen", 15),
          Map.entry("twenty", 20),
          Map.entry("thirty", 30),
          Map.entry("forty", 40),
          Map.entry("fifty", 50),
          Map.entry("sixty", 60),
          Map.entry("seventy", 70),
          Map.entry("eighty", 80),
          Map.entry("ninety", 90),
          Map.entry("hundred", 100),
          Map.entry("dozen", 12));

  private static final Map<String, Integer> ORDINALS =
      Map.of(
          "first", 1, "1st", 1, "second", 2, "2nd", 2, "third", 3, "3rd", 3, "fourth", 4, "4th", 4,
          "fifth", 5);

  private Counting() {}

  /** The number that a word or a figure is; none where it is not whole. */
  public static OptionalInt of(String word) {
    Integer known = WORDS.get(word);
    if (known != null) {
      return OptionalInt.of(known);
    }
    return word.matches("\\d{1,6}") ? OptionalInt.of(Integer.parseInt(word)) : OptionalInt.empty();
  }

  /** The place that "first", "2nd" or "third" is. */
  public static OptionalInt ordinal(String word) {
    Integer known = ORDINALS.get(word);
    return known == null ? OptionalInt.empty() : OptionalInt.of(known);
  }
}
