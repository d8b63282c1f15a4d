package charline.trial;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A measured depth that does not go with the thickness of the coat: one of depth, thickness and
 * outcome is wrong.
 *
 * @param code of the patch
 * @param kind in what they differ
 * @param passes after which
 * @param depthMicrometres removed by then: as measured, or at the pace of the last depth measured
 *     before
 * @param measured whether it was measured after those passes
 * @param coatMicrometres thickness of all coats together
 */
public record DepthClash(
    String code,
    Kind kind,
    int passes,
    double depthMicrometres,
    boolean measured,
    double coatMicrometres) {
  /** In what depth and thickness differ. */
  public enum Kind {
    /** The finish is gone, though less was removed than the coat is thick. */
    GONE_TOO_SOON,
    /** Finish is left, though more was removed than the coat is thick. */
    LEFT_TOO_LONG
  }

  /** A film brushed or sprayed on wood varies by so much either way (common practice). */
  private static final double FILM_VARIES = 0.3;

  /** The first clash of a patch; empty where its coat's thickness or every depth is unknown. */
  public static Optional<DepthClash> of(Patch patch) {
    OptionalDouble coat = patch.finish().thicknessMicrometres();
    if (coat.isEmpty()) {
      return Optional.empty();
    }
    Optional<Reading> before = Optional.empty();
    for (Reading reading : patch.readings()) {
      boolean gone = reading.outcome().cleared(true);
      if (gone) {
        return atClean(patch, before, reading, coat.getAsDouble());
      }
      if (reading.depthMicrometres().isPresent()) {
        double depth = reading.depthMicrometres().getAsDouble();
        if (depth > (1 + FILM_VARIES) * coat.getAsDouble()) {
          return Optional.of(
              new DepthClash(
                  patch.code(),
                  Kind.LEFT_TOO_LONG,
                  reading.passes(),
                  depth,
                  true,
                  coat.getAsDouble()));
        }
        before = Optional.of(reading);
      }
    }
    return Optional.empty();
  }

  private static Optional<DepthClash> atClean(
      Patch patch, Optional<Reading> before, Reading clean, double coat) {
    boolean measured = clean.depthMicrometres().isPresent();
    OptionalDouble depth =
        measured
            ? clean.depthMicrometres()
            : before
                .map(r -> r.depthMicrometres().getAsDouble() / r.passes() * clean.passes())
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    if (depth.isEmpty() || depth.getAsDouble() >= (1 - FILM_VARIES) * coat) {
      return Optional.empty();
    }
    return Optional.of(
        new DepthClash(
            patch.code(), Kind.GONE_TOO_SOON, clean.passes(), depth.getAsDouble(), measured, coat));
  }
}
