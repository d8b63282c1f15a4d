package charline.log.reference;

import charline.refusal.Refusal;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Words like a mistyped one, by edit distance: the fewest letters to insert, drop, replace or swap
 * with a neighbour (the restricted distance of Damerau 1964). No library at hand offers it.
 */
public final class Nearest {
  private static final int OFFERED = 3;
  private static final int LONGEST = 120;

  private Nearest() {}

  /** Up to three known words, equally near and close enough to be meant; may be empty. */
  public static List<String> to(String word, Collection<String> known) {
    String asked = word.toLowerCase(Locale.ROOT);
    if (asked.length() > LONGEST) {
      return List.of(); // pasted, not mistyped
    }
    int limit = Math.max(2, asked.length() / 3);
    record Candidate(String word, int distance) {}
    List<Candidate> close =
        known.stream()
            .distinct()
            .filter(k -> Math.abs(k.length() - asked.length()) <= limit)
            .map(k -> new Candidate(k, distance(asked, k.toLowerCase(Locale.ROOT))))
            .filter(c -> c.distance() <= limit && c.distance() < Math.max(asked.length(), 2))
            .sorted(Comparator.comparingInt(Candidate::distance).thenComparing(Candidate::word))
            .toList();
    return close.stream()
        .filter(c -> c.distance() == close.get(0).distance())
        .limit(OFFERED)
        .map(Candidate::word)
        .toList();
  }

  /** Whether one letter more, less, other or swapped makes a word one of those known. */
  public static boolean isOneOff(String word, Collection<String> known) {
    return known.stream()
        .anyMatch(
            k ->
                Math.abs(k.length() - word.length()) < 2
                    && distance(word, k.toLowerCase(Locale.ROOT)) == 1);
  }

  static int distance(String a, String b) {
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] now = new int[b.length() + 1];
      now[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        now[j] = Math.min(replaced, Math.min(last[j], now[j - 1]) + 1);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          now[j] = Math.min(now[j], beforeLast[j - 2] + 1);
        }
      }
      beforeLast = last;
      last = now;
    }
    return last[b.length()];
  }

  /**
   * The refusal of an unknown name: {@code No rig "shop-20" in this log; nearest: shop-200.}
   *
   * @param kind what was asked for, such as "rig"
   */
  public static Refusal refusal(String kind, String asked, Collection<String> known) {
    List<String> near = to(asked, known);
    String rest;
    if (!near.isEmpty()) {
      rest = "nearest: " + String.join(", ", near);
    } else if (known.isEmpty()) {
      rest = "it has none yet";
    } else if (known.size() <= 8) {
      rest = "it has " + String.join(", ", known);
    } else {
      rest = "none of its %d is like it".formatted(known.size());
    }
    return Refusal.usage("No %s \"%s\" in this log; %s.".formatted(kind, asked, rest));
  }
}
