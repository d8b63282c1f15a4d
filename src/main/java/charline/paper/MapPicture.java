package charline.paper;

import charline.window.Recommendation;
import java.util.List;
import java.util.Optional;

/**
 * The map of power against speed, laid out for drawing. Lengths are drawing units of a tenth of a
 * millimetre at full size; all texts are plain.
 *
 * @param frame the plotting area
 * @param regions states that occur, each with its outline
 * @param labels words for the regions that have room for them
 * @param speedTicks round speeds
 * @param powerTicks round powers
 * @param speedTitle what runs to the right
 * @param powerTitle what runs upwards
 * @param box the window, where there is one
 * @param start place of the start setting, where there is one
 * @param tags words tied to a place: the start and the box
 * @param signs the trials
 * @param tallies how many trials of each sign are drawn
 * @param notes what a reader must know of the trials drawn and left out
 */
public record MapPicture(
    Rect frame,
    List<Region> regions,
    List<Label> labels,
    List<Tick> speedTicks,
    List<Tick> powerTicks,
    String speedTitle,
    String powerTitle,
    Optional<Rect> box,
    Optional<Point> start,
    List<Tag> tags,
    List<Sign> signs,
    List<Tally> tallies,
    List<String> notes) {
  /** Width of the whole drawing. */
  public static final int WIDTH = 1180;

  /** Height of the plotting area where nothing asks for another. */
  static final int USUAL_PLOT_HEIGHT = 550;

  private static final int BELOW_PLOT = 110;

  /** A place. */
  public record Point(long x, long y) {}

  /** A rectangle. */
  public record Rect(long x, long y, long width, long height) {
    boolean touches(Rect other) {
      return x < other.x + other.width
          && other.x < x + width
          && y < other.y + other.height
          && other.y < y + height;
    }

    Point middle() {
      return new Point(x + width / 2, y + height / 2);
    }

    Point nearestTo(Point other) {
      return new Point(
          Math.max(x, Math.min(x + width, other.x)), Math.max(y, Math.min(y + height, other.y)));
    }

    boolean inside(Rect other) {
      return x >= other.x
          && y >= other.y
          && x + width <= other.x + other.width
          && y + height <= other.y + other.height;
    }
  }

  /** All cells of a state as one path. */
  public record Region(CellState state, String path) {}

  /** Words centred on a place. */
  public record Label(Point at, String text) {}

  /** Framed words with a line to the place they are about. */
  public record Tag(Point from, Rect frame, String text) {}

  /** A round value at a distance along its axis. */
  public record Tick(long at, String text) {}

  /**
   * Trials with one outcome at one place; {@code note} says more than the shape does, or is blank.
   */
  public record Sign(Point at, PatchSign sign, String note, String title) {}

  /** Trials drawn with one sign. */
  public record Tally(PatchSign sign, int patches) {}

  /** How many trials are drawn with a sign. */
  int count(PatchSign sign) {
    return tallies.stream().filter(t -> t.sign() == sign).mapToInt(Tally::patches).sum();
  }

  /** Height of the whole drawing. */
  public long height() {
    return frame.y() + frame.height() + BELOW_PLOT;
  }

  /** The map of a recommendation, empty where it has none. */
  static Optional<MapPicture> of(Recommendation recommendation, int plotHeight) {
    return of(recommendation, MapScale.paper(plotHeight));
  }

  /** The same with words that can be read on a phone. */
  public static Optional<MapPicture> forScreen(Recommendation recommendation) {
    return of(recommendation, MapScale.screen());
  }

  private static Optional<MapPicture> of(Recommendation recommendation, MapScale scale) {
    return recommendation
        .map()
        .filter(m -> !m.powersPercent().isEmpty() && !m.speedsMillimetresPerSecond().isEmpty())
        .map(m -> new MapLayout(recommendation, m, scale).picture());
  }
}
