package charline.exposure;

import charline.quantity.Invariant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the head draws, and how far it is from the work.
 *
 * @param figure the path that it draws
 * @param linesPerSecond lines or turns per second, above 0
 * @param standOffMillimetres distance from head to work, above 0
 * @param defocusMillimetres distance of the work from focus; the sign says on which side
 */
public record Head(
    Optional<Figure> figure,
    OptionalDouble linesPerSecond,
    OptionalDouble standOffMillimetres,
    OptionalDouble defocusMillimetres) {
  /** Of which nothing is known. */
  public static final Head UNKNOWN =
      new Head(
          Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

  public Head {
    linesPerSecond.ifPresent(n -> Invariant.positive("Lines per second", n, "/s"));
    standOffMillimetres.ifPresent(d -> Invariant.positive("Stand-off", d, "mm"));
  }

  /** How the spot runs in a pass led by hand, where figure, width and rate say it. */
  public Optional<ScanFigure> path(DoseForm form) {
    return form instanceof HandPass hand && figure.isPresent() && linesPerSecond.isPresent()
        ? figure.get().path(hand.scanWidthMillimetres(), linesPerSecond.getAsDouble())
        : Optional.empty();
  }

  /** The lines that a pass lays down: those of a scanner, or those that follow from the figure. */
  public Optional<LineScan> lines(DoseForm form) {
    return form instanceof LineScan scan
        ? Optional.of(scan)
        : path(form).map(path -> ((HandPass) form).linesOf(path));
  }
}
