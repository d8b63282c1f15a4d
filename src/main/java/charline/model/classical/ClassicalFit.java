package charline.model.classical;

import charline.model.Event;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A classical fit.
 *
 * @param coefficients intercept first; change of the log odds per unit
 * @param at where doses are read off
 * @param even dose with an even chance, with two-sided limits; empty where dose did not vary
 * @param atRisk dose at the asked risk, with its one-sided bound; empty where dose did not vary
 * @param checks how well it agrees with what was seen
 */
public record ClassicalFit(
    Event event,
    Method method,
    String rows,
    List<String> notes,
    Optional<Separating> separation,
    List<Coefficient> coefficients,
    Setting at,
    Optional<DoseAnswer> even,
    Optional<DoseAnswer> atRisk,
    ClassicalChecks checks)
    implements ClassicalOutcome {

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

  private OptionalDouble slope(String ending) {
    return coefficients.stream()
        .filter(c -> c.name().endsWith(ending))
        .mapToDouble(Coefficient::estimate)
        .findFirst();
  }
}
