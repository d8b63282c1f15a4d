package charline.web.pages;

import charline.quantity.Figures;
import charline.web.live.Staleness;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What an answer that is not the newest does not hold, in one line. */
final class StalenessText {
  /** More codes than these are counted. */
  private static final int MOST_NAMED = 4;

  private static final String NEWER = "A newer answer is being computed.";

  private StalenessText() {}

  /** "Not in this answer yet: P-0041, P-0042. A newer one is being worked out; ..." */
  static String of(Staleness behind) {
    List<String> parts = new ArrayList<>();
    add(parts, "not in this answer yet: ", behind.missing());
    add(parts, "as they were before: ", behind.changed());
    add(parts, "still in it: ", behind.gone());
    if (parts.isEmpty()) {
      return NEWER;
    }
    String line = String.join("; ", parts);
    return line.substring(0, 1).toUpperCase(Locale.ROOT) + line.substring(1) + ". " + NEWER;
  }

  private static void add(List<String> parts, String words, List<String> codes) {
    int more = codes.size() - MOST_NAMED;
    if (!codes.isEmpty()) {
      parts.add(
          words
              + String.join(", ", codes.subList(0, Math.min(MOST_NAMED, codes.size())))
              + (more > 0 ? " and " + Figures.count(more, "other", "others") : ""));
    }
  }
}
