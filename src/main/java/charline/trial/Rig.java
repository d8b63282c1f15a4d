package charline.trial;

import charline.exposure.Emission;
import charline.exposure.Focus;
import charline.exposure.Optics;
import charline.exposure.PowerCurve;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.SpotDefinition;
import charline.quantity.Invariant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
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
 * @param largestPulseMillijoules largest energy of a pulse that the source gives, where it is known
 *     (pulsed)
 * @param lens lens as used, in the person's words
 * @param usual usual circumstances: figure, lines per second, stand-off, defocus, air, extraction
 * @param optics what turns a defocus into a spot, as far as it is known
 * @param checks power checks, in any order
 * @param upkeep what was done to it, in any order
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
    OptionalDouble largestPulseMillijoules,
    Optional<String> lens,
    Circumstances usual,
    Optics optics,
    List<PowerCheck> checks,
    List<Upkeep> upkeep) {
  /** Closer than 3 % no meter and no dial repeats (common practice, no published source). */
  private static final double SAME = 0.03;

  public Rig {
    lens = PlainText.answer(lens);
    Invariant.positive("Rated power", ratedWatts, "W");
    Invariant.positive("Wavelength", wavelengthNanometres, "nm");
    spotMillimetres.ifPresent(d -> Invariant.positive("Spot diameter", d, "mm"));
    repetitionKilohertz.ifPresent(f -> Invariant.positive("Repetition rate", f, "kHz"));
    pulseNanoseconds.ifPresent(t -> Invariant.positive("Pulse duration", t, "ns"));
    scanWidthMillimetres.ifPresent(w -> Invariant.positive("Scan width", w, "mm"));
    largestPulseMillijoules.ifPresent(e -> Invariant.positive("Largest pulse energy", e, "mJ"));
    checks = checks.stream().sorted((a, b) -> a.at().compareTo(b.at())).toList();
    upkeep = upkeep.stream().sorted((a, b) -> a.at().compareTo(b.at())).toList();
  }

  /** The same with other power checks. */
  public Rig withChecks(List<PowerCheck> others) {
    return new Rig(
        id,
        name,
        emission,
        ratedWatts,
        wavelengthNanometres,
        spotDefinition,
        spotMillimetres,
        repetitionKilohertz,
        pulseNanoseconds,
        scanWidthMillimetres,
        largestPulseMillijoules,
        lens,
        usual,
        optics,
        others,
        upkeep);
  }

  /** How the spot grows away from focus; empty where not enough is known. */
  public Optional<Focus> focus() {
    return optics.focus(spotDefinition, wavelengthNanometres);
  }

  /** The latest power check on or before a moment. */
  public Optional<PowerCheck> checkAt(OffsetDateTime moment) {
    return checks.stream().filter(c -> !c.at().isAfter(moment)).reduce((a, b) -> b);
  }

  /**
   * The power checks that count at a moment for work with these pulses: of the latest day with a
   * check on or before it, those metered at the nearest repetition rate and pulse duration. A check
   * that names none was made with the rig's usual ones; where neither is known, any will do.
   *
   * @param pulses as dialled in; empty for a continuous rig
   * @return in the order of metering; empty where the rig was not metered yet
   */
  public List<PowerCheck> checksFor(Optional<Pulses> pulses, OffsetDateTime moment) {
    Optional<LocalDate> day = checkAt(moment).map(c -> c.at().toLocalDate());
    List<PowerCheck> ofDay =
        checks.stream()
            .filter(
                c ->
                    !c.at().isAfter(moment) && day.filter(c.at().toLocalDate()::equals).isPresent())
            .toList();
    double nearest = ofDay.stream().mapToDouble(c -> distance(c, pulses)).min().orElse(0);
    return ofDay.stream().filter(c -> distance(c, pulses) <= nearest + SAME).toList();
  }

  /** How far the pulses of a check are from others, in ln units. */
  private double distance(PowerCheck check, Optional<Pulses> pulses) {
    return distance(
            or(check.repetitionKilohertz(), repetitionKilohertz),
            pulses
                .map(p -> OptionalDouble.of(p.repetitionKilohertz()))
                .orElse(OptionalDouble.empty()))
        + distance(
            or(check.pulseNanoseconds(), pulseNanoseconds),
            pulses.map(Pulses::durationNanoseconds).orElse(OptionalDouble.empty()));
  }

  private static double distance(OptionalDouble metered, OptionalDouble wanted) {
    return metered.isPresent() && wanted.isPresent()
        ? Math.abs(Math.log(metered.getAsDouble() / wanted.getAsDouble()))
        : 0;
  }

  private static OptionalDouble or(OptionalDouble own, OptionalDouble usual) {
    return own.isPresent() ? own : usual;
  }

  /**
   * Whether a check was made at other pulses than these, so that its power need not be theirs.
   *
   * @param pulses as dialled in
   */
  public boolean meteredOtherwise(PowerCheck check, Optional<Pulses> pulses) {
    return distance(check, pulses) > SAME;
  }

  /** The repetition rate that a check was made at, as far as it is known. */
  public OptionalDouble repetitionOf(PowerCheck check) {
    return or(check.repetitionKilohertz(), repetitionKilohertz);
  }

  /** The pulse duration that a check was made at, as far as it is known. */
  public OptionalDouble pulseOf(PowerCheck check) {
    return or(check.pulseNanoseconds(), pulseNanoseconds);
  }

  /**
   * Power on the work over the power setting at a moment, by the checks {@link #checksFor} it; the
   * rating where there are none.
   */
  public PowerCurve powerCurve(Optional<Pulses> pulses, OffsetDateTime moment) {
    List<PowerCheck> counting = checksFor(pulses, moment);
    return counting.isEmpty() ? PowerCurve.rated(ratedWatts) : PowerCheck.curve(counting);
  }

  /**
   * Power delivered to the work at a moment, in W.
   *
   * @param pulses as dialled in; empty for a continuous rig
   */
  public double deliveredWatts(PowerSetting power, Optional<Pulses> pulses, OffsetDateTime moment) {
    return power.deliveredWatts(powerCurve(pulses, moment));
  }

  /**
   * Most power in W that the source gives with these pulses, where its largest pulse energy is
   * known: energy times repetition rate.
   */
  public OptionalDouble mostWatts(Optional<Pulses> pulses) {
    return largestPulseMillijoules.isPresent() && pulses.isPresent()
        ? OptionalDouble.of(
            largestPulseMillijoules.getAsDouble() * pulses.get().repetitionKilohertz())
        : OptionalDouble.empty();
  }
}
