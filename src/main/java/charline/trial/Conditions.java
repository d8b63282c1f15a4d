package charline.trial;

import charline.quantity.Invariant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * On what part of the wood, and how warm, wet and ventilated, a pass was made.
 *
 * @param restSeconds rest between two passes, 0 or more
 * @param place where on the board
 * @param part sapwood or heartwood
 * @param wetted whether the finish was wetted
 * @param air whether air was blown at it
 * @param extraction whether the fumes were extracted
 * @param temperatureCelsius of the wood
 */
public record Conditions(
    OptionalDouble restSeconds,
    Optional<Place> place,
    Optional<WoodPart> part,
    Optional<Boolean> wetted,
    Optional<Boolean> air,
    Optional<Boolean> extraction,
    OptionalDouble temperatureCelsius) {
  /** Of which nothing is known. */
  public static final Conditions UNKNOWN =
      new Conditions(
          OptionalDouble.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty());

  public Conditions {
    restSeconds.ifPresent(s -> Invariant.notNegative("Rest between passes", s, "s"));
  }
}
