package charline.log.search;

import charline.exposure.Emission;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What of a patch is a number, in the unit of its knob. */
public enum Amount {
  POWER_PCT(Knob.POWER_PCT, "power", p -> knob(p, Knob.POWER_PCT)),
  /** On the work, as the power checks have it. */
  POWER_W(Knob.POWER_W, "power on the work", p -> OptionalDouble.of(p.exposure().deliveredWatts())),
  /** Of the hand, or of a scanner's spot. */
  SPEED(Knob.HAND, "speed", p -> or(knob(p, Knob.HAND), knob(p, Knob.SCAN))),
  HAND(Knob.HAND, "hand speed", p -> knob(p, Knob.HAND)),
  SCAN(Knob.SCAN, "scan speed", p -> knob(p, Knob.SCAN)),
  SPACING(Knob.SPACING, "line spacing", p -> knob(p, Knob.SPACING)),
  WIDTH(Knob.WIDTH, "scan width", p -> knob(p, Knob.WIDTH)),
  SPOT(Knob.SPOT, "spot", p -> knob(p, Knob.SPOT)),
  RATE(Knob.RATE, "repetition rate", p -> knob(p, Knob.RATE)),
  PULSE(Knob.PULSE, "pulse duration", p -> knob(p, Knob.PULSE)),
  SECONDS(Knob.SECONDS, "time per pass", p -> knob(p, Knob.SECONDS)),
  DOSE(Knob.DOSE, "dose of one pass", p -> OptionalDouble.of(p.exposure().doseJoulesPerCm2())),
  /** Of all passes together. */
  TOTAL_DOSE(
      Knob.DOSE,
      "dose in all",
      p -> OptionalDouble.of(p.exposure().doseJoulesPerCm2() * p.lastReading().passes())),
  FLUENCE(Knob.FLUENCE, "fluence", p -> intensity(p, Emission.PULSED)),
  IRRADIANCE(Knob.IRRADIANCE, "irradiance", p -> intensity(p, Emission.CONTINUOUS)),
  /** In all, by the last reading. */
  PASSES(Knob.PASSES, "passes in all", p -> OptionalDouble.of(p.lastReading().passes())),
  /** The last that was measured. */
  DEPTH(Knob.DEPTH, "depth removed", Amount::depth),
  PATCH_AREA(Knob.PATCH_AREA, "patch size", Patch::areaSquareCentimetres),
  MOISTURE(Knob.MOISTURE, "moisture", p -> p.board().moisturePercent()),
  /** Of all coats together. */
  THICKNESS(Knob.THICKNESS, "coat thickness", p -> p.finish().thicknessMicrometres()),
  REST(Knob.REST, "rest between passes", p -> circumstance(p, Knob.REST)),
  STAND_OFF(Knob.STAND_OFF, "stand-off", p -> circumstance(p, Knob.STAND_OFF)),
  DEFOCUS(Knob.DEFOCUS, "defocus", p -> circumstance(p, Knob.DEFOCUS)),
  LINES(Knob.LINES, "lines or turns", p -> circumstance(p, Knob.LINES)),
  TEMPERATURE(Knob.TEMPERATURE, "temperature", p -> circumstance(p, Knob.TEMPERATURE)),
  WAVELENGTH(Knob.WAVELENGTH, "wavelength", p -> OptionalDouble.of(p.rig().wavelengthNanometres())),
  RATED(Knob.PULSED_POWER, "rated power", p -> OptionalDouble.of(p.rig().ratedWatts()));

  private final Knob knob;
  private final String words;
  private final Function<Patch, OptionalDouble> value;

  Amount(Knob knob, String words, Function<Patch, OptionalDouble> value) {
    this.knob = knob;
    this.words = words;
    this.value = value;
  }

  /** The knob that has its unit. */
  public Knob knob() {
    return knob;
  }

  /** What it is, within a sentence. */
  public String words() {
    return words;
  }

  /** Its unit; blank for a count. */
  public String unit() {
    return this == PASSES ? "" : knob.unit();
  }

  /** Its value for a patch; empty where it is not known or does not apply. */
  public OptionalDouble of(Patch patch) {
    return value.apply(patch);
  }

  private static OptionalDouble knob(Patch patch, Knob knob) {
    Double number = KnobValues.of(patch.settings()).get(knob);
    return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  private static OptionalDouble circumstance(Patch patch, Knob knob) {
    Double number = (Double) patch.circumstances().values().get(knob);
    return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  private static OptionalDouble or(OptionalDouble first, OptionalDouble second) {
    return first.isPresent() ? first : second;
  }

  private static OptionalDouble intensity(Patch patch, Emission emission) {
    return patch.rig().emission() == emission
        ? OptionalDouble.of(patch.exposure().intensity())
        : OptionalDouble.empty();
  }

  private static OptionalDouble depth(Patch patch) {
    List<Reading> readings = patch.readings();
    for (int i = readings.size() - 1; i >= 0; i--) {
      if (readings.get(i).depthMicrometres().isPresent()) {
        return readings.get(i).depthMicrometres();
      }
    }
    return OptionalDouble.empty();
  }
}
