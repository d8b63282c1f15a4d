package charline.exposure;

import charline.refusal.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The path that a head draws, by its name.
 *
 * @param word in lower case; one of {@link #words} or a person's own
 */
public record Figure(String word) {
  /** Straight lines side by side, at one speed. */
  public static final Figure LINE = new Figure("line");

  /** A line to and fro with a resonant mirror, slow at its ends. */
  public static final Figure SINE = new Figure("sine");

  /** A line to and fro at one speed. */
  public static final Figure ZIGZAG = new Figure("zigzag");

  public static final Figure CIRCLE = new Figure("circle");
  public static final Figure SPIRAL = new Figure("spiral");
  public static final Figure RING = new Figure("ring");

  private static final List<Figure> KNOWN = List.of(LINE, CIRCLE, SPIRAL, RING, ZIGZAG, SINE);

  private static final Map<String, String> SPELLED =
      Map.of(
          "lines",
          "line",
          "circles",
          "circle",
          "spirals",
          "spiral",
          "rings",
          "ring",
          "zig-zag",
          "zigzag",
          "zig zag",
          "zigzag",
          "sinus",
          "sine",
          "sinusoid",
          "sine");

  private static final int LONGEST = 30;

  public Figure {
    if (word.isBlank()
        || word.length() > LONGEST
        || word.chars().anyMatch(Character::isISOControl)) {
      throw Refusal.usage(
          "A scan figure must be a word of at most %d characters, such as %s; give one."
              .formatted(LONGEST, String.join(", ", words())));
    }
  }

  /** The words of figures that are known here, "line" first. */
  public static List<String> words() {
    return KNOWN.stream().map(Figure::word).toList();
  }

  /** The figure that a person means. */
  public static Figure ofWord(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    return new Figure(SPELLED.getOrDefault(word, word));
  }

  /** False for a person's own word. */
  public boolean isKnown() {
    return KNOWN.contains(this);
  }

  /**
   * How the spot runs along it. Empty for a spiral, a ring and a person's own figure: their speed
   * hangs on how the head fills them.
   *
   * @param widthMillimetres width across the track, of a circle its diameter
   * @param perSecond lines or turns per second; to and fro are two lines
   */
  public Optional<ScanFigure> path(double widthMillimetres, double perSecond) {
    return switch (word) {
      case "line" -> Optional.of(new ScanFigure.OneWayLines(widthMillimetres, perSecond, 1));
      case "zigzag" -> Optional.of(new ScanFigure.TriangleSweep(widthMillimetres, perSecond / 2));
      case "sine" -> Optional.of(new ScanFigure.Sinusoid(widthMillimetres, perSecond / 2));
      case "circle" -> Optional.of(new ScanFigure.Circle(widthMillimetres, perSecond));
      default -> Optional.empty();
    };
  }
}
