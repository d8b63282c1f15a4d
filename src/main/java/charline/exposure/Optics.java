package charline.exposure;

import charline.quantity.Invariant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What turns a defocus into a spot, as far as it is known of a rig.
 *
 * @param focusSpotMillimetres spot diameter at focus, as the rig's spots are measured, above 0
 * @param beamQuality M², 1 or more
 */
public record Optics(OptionalDouble focusSpotMillimetres, OptionalDouble beamQuality) {
  /** Of which nothing is known. */
  public static final Optics UNKNOWN = new Optics(OptionalDouble.empty(), OptionalDouble.empty());

  public Optics {
    focusSpotMillimetres.ifPresent(d -> Invariant.positive("Spot diameter at focus", d, "mm"));
    beamQuality.ifPresent(m2 -> Invariant.within("Beam quality M2", m2, 1, 1e6, ""));
  }

  /** The beam around its focus; empty where not enough is known. */
  public Optional<Focus> focus(SpotDefinition definition, double wavelengthNanometres) {
    return focusSpotMillimetres.isPresent() && beamQuality.isPresent()
        ? Optional.of(
            new Focus(
                new Spot(focusSpotMillimetres.getAsDouble(), definition)
                    .oneOverESquaredMillimetres(),
                beamQuality.getAsDouble(),
                wavelengthNanometres / 1000))
        : Optional.empty();
  }
}
