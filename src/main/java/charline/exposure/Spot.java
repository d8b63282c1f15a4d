package charline.exposure;

import charline.quantity.Invariant;
import java.util.Objects;

/**
 * The spot on the work.
 *
 * @param diameterMillimetres as {@code definition} says, above 0
 * @param definition what the diameter means
 */
public record Spot(double diameterMillimetres, SpotDefinition definition) {
  public Spot {
    Invariant.positive("Spot diameter", diameterMillimetres, "mm");
    Objects.requireNonNull(definition, "Give the definition of the spot diameter.");
  }

  /** The 1/e² diameter of the same Gaussian beam, in mm. */
  public double oneOverESquaredMillimetres() {
    return diameterMillimetres * definition.toOneOverESquared();
  }

  /** The same beam with its diameter quoted under another definition. */
  public Spot as(SpotDefinition other) {
    return new Spot(oneOverESquaredMillimetres() / other.toOneOverESquared(), other);
  }

  /** Area of the 1/e² disc, π d² / 4, in cm². */
  public double areaSquareCentimetres() {
    double centimetres = oneOverESquaredMillimetres() / 10;
    return Math.PI * centimetres * centimetres / 4;
  }

  /**
   * The spot when the head is tilted: stretched along the tilt by 1/cos, given here as the circle
   * of the same area, so that fluence falls by cos.
   *
   * @param degrees tilt from square-on, 0 up to but not 90
   */
  public Spot tilted(double degrees) {
    Invariant.within("Tilt", degrees, 0, 89, "degrees");
    return new Spot(diameterMillimetres / Math.sqrt(Math.cos(Math.toRadians(degrees))), definition);
  }
}
