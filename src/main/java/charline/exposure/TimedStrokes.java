package charline.exposure;

import charline.quantity.Invariant;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Strokes of the hand over a marked length, each timed.
 *
 * @param lengthMillimetres length of a stroke, above 0
 * @param seconds time of each, above 0; at least one
 */
public record TimedStrokes(double lengthMillimetres, List<Double> seconds) {
  private static final String FORM = "the time of each stroke with blanks between, such as 4.1 3.9";

  public TimedStrokes {
    Invariant.positive("Stroke length", lengthMillimetres, "mm");
    seconds = List.copyOf(seconds);
    seconds.forEach(t -> Invariant.positive("Time of a stroke", t, "s"));
    if (seconds.isEmpty()) {
      throw Refusal.usage("Timed strokes need at least one time; give %s.".formatted(FORM));
    }
  }

  /**
   * Reads times with blanks or semicolons between. Commas stand between times only where the times
   * have decimal points; else they are decimal commas.
   */
  public static List<Double> times(String text) {
    String plain = text.strip();
    boolean apart = plain.matches("(?s).*[\\s;].*");
    if (!apart && !plain.contains(".") && plain.contains(",")) {
      throw Refusal.usage(
          "Stroke times of %s can be read in two ways; give %s.".formatted(plain, FORM));
    }
    String separators = plain.contains(".") ? "[\\s;,]+" : "[\\s;]+";
    return Arrays.stream(plain.split(separators))
        .filter(part -> !part.isEmpty())
        .map(part -> Measure.parse(part, Quantity.TIME).value())
        .map(t -> Invariant.positive("Time of a stroke", t, "s"))
        .toList();
  }

  /** The times as {@link #times} reads them, each so that it reads back equal. */
  public static String text(List<Double> seconds) {
    return seconds.stream()
        .map(t -> BigDecimal.valueOf(t).stripTrailingZeros().toPlainString())
        .collect(Collectors.joining(" "));
  }

  /**
   * Hand speed, all the way over all the time, in mm/s: the speed whose dose is the mean of the
   * strokes' doses, as dose goes with time.
   */
  public double handSpeedMillimetresPerSecond() {
    return lengthMillimetres / meanSeconds();
  }

  private double meanSeconds() {
    return seconds.stream().mapToDouble(t -> t).average().orElseThrow();
  }

  /**
   * Standard deviation of the times over their mean, which is that of the dose from stroke to
   * stroke; empty for one stroke alone.
   */
  public OptionalDouble spread() {
    if (seconds.size() < 2) {
      return OptionalDouble.empty();
    }
    double mean = meanSeconds();
    double squares = seconds.stream().mapToDouble(t -> (t - mean) * (t - mean)).sum();
    return OptionalDouble.of(Math.sqrt(squares / (seconds.size() - 1)) / mean);
  }
}
