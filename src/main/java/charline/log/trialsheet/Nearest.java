package charline.log.trialsheet;

import java.util.Comparator;
import java.util.List;

/** Finds the word that was probably meant. */
final class Nearest {
  private Nearest() {}

  /** The word with the fewest letters to insert, drop or change; the first of several. */
  static String to(String word, List<String> words) {
    return words.stream().min(Comparator.comparingInt(w -> distance(word, w))).orElseThrow();
  }

  /** Levenshtein distance. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
