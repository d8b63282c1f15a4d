package charline.reference;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How close a number must come to the expected one: within either part.
 *
 * @param relative to the expected number, 0 for none
 * @param absolute 0 for none
 */
public record Tolerance(double relative, double absolute) {
  /** For counts. */
  public static final Tolerance EXACT = new Tolerance(0, 0);

  private static final Pattern RELATIVE = Pattern.compile("relative (\\d+(?:e-\\d+)?)");
  private static final Pattern ABSOLUTE = Pattern.compile("absolute (\\d+(?:e-\\d+)?)");

  /** Half a unit in the last of the printed decimals. */
  public static Tolerance asPrinted(int decimals) {
    return new Tolerance(0, 0.5 * Math.pow(10, -decimals) * (1 + 1e-9));
  }

  /** Reads "relative 1e-6 (absolute 1e-7 near 0)". */
  static Tolerance parse(String words) {
    return new Tolerance(first(RELATIVE, words), first(ABSOLUTE, words));
  }

  private static double first(Pattern pattern, String words) {
    Matcher matcher = pattern.matcher(words);
    return matcher.find() ? Double.parseDouble(matcher.group(1)) : 0;
  }

  /** The same with an allowance near 0, where rounding leaves no relative accuracy. */
  public Tolerance orWithin(double distance) {
    return new Tolerance(relative, Math.max(absolute, distance));
  }

  boolean accepts(double expected, double actual) {
    return Math.abs(actual - expected) <= Math.max(absolute, relative * Math.abs(expected));
  }
}
