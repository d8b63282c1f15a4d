package charline.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers as they were printed, compared exactly with what they stand for. */
public final class Printed {
  private static final String NUMBER = "(-?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?)";

  private Printed() {}

  /**
   * Numbers of a text, in the order of printing.
   *
   * @param pattern a regular expression in which {@code #} stands for a number
   */
  public static List<BigDecimal> numbers(String text, String pattern) {
    Matcher matcher =
        Pattern.compile(pattern.replace(" ", "[\\s\\u00a0]+").replace("#", NUMBER)).matcher(text);
    List<BigDecimal> all = new ArrayList<>();
    while (matcher.find()) {
      for (int group = 1; group <= matcher.groupCount(); group++) {
        all.add(new BigDecimal(matcher.group(group)));
      }
    }
    return all;
  }

  /** The same, for a pattern that is printed once. */
  public static List<BigDecimal> only(String text, String pattern, int numbers) {
    List<BigDecimal> found = numbers(text, pattern);
    assertThat(found).as("\"%s\" in %s", pattern, text).hasSize(numbers);
    return found;
  }

  /** A printed upper bound must not lie below the exact one. */
  public static void atMost(String where, BigDecimal printed, double exact) {
    assertThat(printed).as(where).isGreaterThanOrEqualTo(BigDecimal.valueOf(exact));
  }

  /** A printed lower bound must not lie above the exact one. */
  public static void atLeast(String where, BigDecimal printed, double exact) {
    assertThat(printed).as(where).isLessThanOrEqualTo(BigDecimal.valueOf(exact));
  }

  /** A printed upper bound in percent. */
  public static void percentAtMost(String where, BigDecimal printed, double share) {
    atMost(where, printed.movePointLeft(2), share);
  }

  /** A printed lower bound in percent. */
  public static void percentAtLeast(String where, BigDecimal printed, double share) {
    atLeast(where, printed.movePointLeft(2), share);
  }

  /** A printed range must not reach outside the exact one. */
  public static void inside(
      String where, BigDecimal low, BigDecimal high, double exactLow, double exactHigh) {
    atMost(where, low, exactLow);
    atLeast(where, high, exactHigh);
    assertThat(low).as(where).isLessThanOrEqualTo(high);
  }
}
