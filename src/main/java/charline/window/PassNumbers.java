package charline.window;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;

/**
 * The numbers of passes for which a window is looked for: from the fewest to the most that were
 * tried, those between them that were not tried included.
 *
 * <p>All of them up to about forty; beyond that each at most 5 % above the one before, and one that
 * was tried where there is one. Where 5 % more passes open or close a window, some 3 % more or less
 * dose would too, and no hand keeps to that, so none worth having is passed over. The search stays
 * short however large a number was typed: 1,000,000,000 passes take some 400 steps.
 */
final class PassNumbers {
  private static final double STEP = 1.05;

  private PassNumbers() {}

  /**
   * Rising numbers of passes from the least to the greatest of {@code tried}.
   *
   * @param tried one or more numbers, each 1 or more
   */
  static List<Integer> between(NavigableSet<Integer> tried) {
    List<Integer> numbers = new ArrayList<>();
    int passes = tried.first();
    numbers.add(passes);
    while (passes < tried.last()) {
      int furthest = Math.max(passes + 1, (int) (STEP * passes));
      Integer known = tried.floor(furthest);
      passes = known > passes ? known : furthest;
      numbers.add(passes);
    }
    return numbers;
  }
}
