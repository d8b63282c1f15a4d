package charline.window;

/** A closed range, {@code low <= high}. */
public record Range(double low, double high) {
  public Range {
    if (!(low <= high)) {
      throw new IllegalArgumentException(
          "A range must run upwards, not from " + low + " to " + high + ".");
    }
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }
}
