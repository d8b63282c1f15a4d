package charline.model.classical;

import charline.model.Event;
import charline.model.classical.ClassicalOutcome.Separating;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A classical fit.
 *
 * @param coefficients intercept first; change per unit of the log odds, or, where passes are timed,
 *     of ln passes, with the scale last
 * @param limitsBy how their limits were found: "profile" or "Wald"
 * @param at where doses are read off
 * @param even dose with an even chance, with two-sided limits; empty where dose did not vary
 * @param atRisk dose at the asked risk, with its one-sided bound; empty where dose did not vary
 * @param boards how much they differ, where the method estimates it
 * @param passes by which shares of patches have had the event, where the method times them
 * @param checks how well it agrees with what was seen
 */
public record ClassicalFit(
    Event event,
    Method method,
    String rows,
    List<String> notes,
    Optional<Separating> separation,
    List<Coefficient> coefficients,
    String limitsBy,
    CovariateSetting at,
    Optional<DoseAnswer> even,
    Optional<DoseAnswer> atRisk,
    Optional<BoardSpread> boards,
    List<PassesByShare> passes,
    ClassicalChecks checks)
    implements ClassicalOutcome {
  /** The name of the last coefficient where passes are timed. */
  static final String SCALE = "scale";

  /** phi of the passes-to-event model: the weight of ln intensity beside ln dose. */
  public OptionalDouble phi() {
    return besideDose(Columns.INTENSITY);
  }

  /** psi of the passes-to-event model: the weight of ln passes beside ln dose. */
  public OptionalDouble psi() {
    return besideDose(Columns.PASSES);
  }

  /** sigma of the passes-to-event model, the spread of a single patch in ln dose. */
  public OptionalDouble sigma() {
    OptionalDouble slope = slope(Columns.DOSE);
    return slope.isPresent() && slope.getAsDouble() > 0
        ? OptionalDouble.of(1 / slope.getAsDouble())
        : OptionalDouble.empty();
  }

  private OptionalDouble besideDose(String ending) {
    OptionalDouble slope = slope(ending);
    return slope.isPresent() && sigma().isPresent()
        ? OptionalDouble.of(slope.getAsDouble() * sigma().getAsDouble())
        : OptionalDouble.empty();
  }

  /** Change of the log odds; where passes are timed, these are (ln n - mu - b ln D ...) / scale. */
  private OptionalDouble slope(String ending) {
    OptionalDouble scale = estimate(SCALE);
    if (scale.isEmpty()) {
      return estimate(ending);
    }
    if (ending.equals(Columns.PASSES)) {
      return OptionalDouble.of(1 / scale.getAsDouble());
    }
    OptionalDouble slope = estimate(ending);
    return slope.isEmpty() ? slope : OptionalDouble.of(-slope.getAsDouble() / scale.getAsDouble());
  }

  private OptionalDouble estimate(String ending) {
    return coefficients.stream()
        .filter(c -> c.name().endsWith(ending))
        .mapToDouble(Coefficient::estimate)
        .findFirst();
  }
}
