package charline.trial;

import charline.exposure.Emission;
import charline.exposure.PowerSetting;
import charline.exposure.SpotDefinition;
import charline.quantity.Invariant;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * One laser source with its head and lens as used. The usual settings stand in where a patch gives
 * none of its own.
 *
 * @param id permanent identity
 * @param name the person's name for it, unique in a log
 * @param emission pulsed or continuous
 * @param ratedWatts mean power at 100 %, above 0
 * @param wavelengthNanometres wavelength, above 0
 * @param spotDefinition what this rig's spot diameters mean
 * @param spotMillimetres usual spot diameter on the work
 * @param repetitionKilohertz usual repetition rate (pulsed)
 * @param pulseNanoseconds usual pulse duration (pulsed)
 * @param scanWidthMillimetres usual scan width
 * @param lens lens as used, in the person's words
 * @param checks power checks, in any order
 */
public record Rig(
    UUID id,
    String name,
    Emission emission,
    double ratedWatts,
    double wavelengthNanometres,
    SpotDefinition spotDefinition,
    OptionalDouble spotMillimetres,
    OptionalDouble repetitionKilohertz,
    OptionalDouble pulseNanoseconds,
    OptionalDouble scanWidthMillimetres,
    Optional<String> lens,
    List<PowerCheck> checks) {
  public Rig {
    lens = PlainText.answer(lens);
    Invariant.positive("Rated power", ratedWatts, "W");
    Invariant.positive("Wavelength", wavelengthNanometres, "nm");
    spotMillimetres.ifPresent(d -> Invariant.positive("Spot diameter", d, "mm"));
    repetitionKilohertz.ifPresent(f -> Invariant.positive("Repetition rate", f, "kHz"));
    pulseNanoseconds.ifPresent(t -> Invariant.positive("Pulse duration", t, "ns"));
    scanWidthMillimetres.ifPresent(w -> Invariant.positive("Scan width", w, "mm"));
    checks = checks.stream().sorted(Comparator.comparing(PowerCheck::at)).toList();
  }

  /** The latest power check on or before a moment. */
  public Optional<PowerCheck> checkAt(OffsetDateTime moment) {
    return checks.stream().filter(c -> !c.at().isAfter(moment)).reduce((a, b) -> b);
  }

  /** Metered over nominal power at a moment: the latest check on or before it, 1 if none. */
  public double meterFactorAt(OffsetDateTime moment) {
    return checkAt(moment).map(c -> c.factor(ratedWatts)).orElse(1.0);
  }

  /** Power delivered to the work at a moment, in W. */
  public double deliveredWatts(PowerSetting power, OffsetDateTime moment) {
    return power.deliveredWatts(ratedWatts, meterFactorAt(moment));
  }
}
