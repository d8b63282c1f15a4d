package charline.trial;

import charline.exposure.Emission;
import charline.exposure.Optics;
import charline.exposure.SpotDefinition;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * Invented rigs. What a test does not say is that of Heron, the boathouse's rig: pulsed, 200 W,
 * 1064 nm, 0.6 mm by 1/e², 40 kHz, 100 ns, 60 mm, no lens, no power checks.
 */
public final class RigBuilder {
  private UUID id;
  private String name = "Heron";
  private Emission emission = Emission.PULSED;
  private double ratedWatts = 200;
  private double wavelengthNanometres = 1064;
  private SpotDefinition spotDefinition = SpotDefinition.ONE_OVER_E_SQUARED;
  private OptionalDouble spot = OptionalDouble.of(0.6);
  private OptionalDouble repetition = OptionalDouble.of(40);
  private OptionalDouble pulse = OptionalDouble.of(100);
  private OptionalDouble width = OptionalDouble.of(60);
  private OptionalDouble largestPulse = OptionalDouble.empty();
  private Optional<String> lens = Optional.empty();
  private Circumstances usual = Circumstances.UNKNOWN;
  private Optics optics = Optics.UNKNOWN;
  private List<PowerCheck> checks = List.of();
  private List<Upkeep> upkeep = List.of();

  private RigBuilder(UUID id) {
    this.id = id;
  }

  /** Heron under another identity. */
  public static RigBuilder heron(UUID id) {
    return new RigBuilder(id);
  }

  /** A rig like another. */
  public static RigBuilder like(Rig rig) {
    RigBuilder b = new RigBuilder(rig.id());
    b.name = rig.name();
    b.emission = rig.emission();
    b.ratedWatts = rig.ratedWatts();
    b.wavelengthNanometres = rig.wavelengthNanometres();
    b.spotDefinition = rig.spotDefinition();
    b.spot = rig.spotMillimetres();
    b.repetition = rig.repetitionKilohertz();
    b.pulse = rig.pulseNanoseconds();
    b.width = rig.scanWidthMillimetres();
    b.largestPulse = rig.largestPulseMillijoules();
    b.lens = rig.lens();
    b.usual = rig.usual();
    b.optics = rig.optics();
    b.checks = rig.checks();
    b.upkeep = rig.upkeep();
    return b;
  }

  public RigBuilder id(UUID other) {
    id = other;
    return this;
  }

  public RigBuilder named(String other) {
    name = other;
    return this;
  }

  public RigBuilder emission(Emission other) {
    emission = other;
    return this;
  }

  public RigBuilder ratedWatts(double watts) {
    ratedWatts = watts;
    return this;
  }

  public RigBuilder wavelengthNanometres(double nanometres) {
    wavelengthNanometres = nanometres;
    return this;
  }

  public RigBuilder spotMeans(SpotDefinition other) {
    spotDefinition = other;
    return this;
  }

  /** Without a usual spot, repetition rate, pulse duration and scan width. */
  public RigBuilder bare() {
    spot = repetition = pulse = width = OptionalDouble.empty();
    return this;
  }

  public RigBuilder spotMillimetres(OptionalDouble millimetres) {
    spot = millimetres;
    return this;
  }

  public RigBuilder spotMillimetres(double millimetres) {
    return spotMillimetres(OptionalDouble.of(millimetres));
  }

  public RigBuilder repetitionKilohertz(OptionalDouble kilohertz) {
    repetition = kilohertz;
    return this;
  }

  public RigBuilder repetitionKilohertz(double kilohertz) {
    return repetitionKilohertz(OptionalDouble.of(kilohertz));
  }

  public RigBuilder pulseNanoseconds(OptionalDouble nanoseconds) {
    pulse = nanoseconds;
    return this;
  }

  public RigBuilder pulseNanoseconds(double nanoseconds) {
    return pulseNanoseconds(OptionalDouble.of(nanoseconds));
  }

  public RigBuilder scanWidthMillimetres(OptionalDouble millimetres) {
    width = millimetres;
    return this;
  }

  public RigBuilder scanWidthMillimetres(double millimetres) {
    return scanWidthMillimetres(OptionalDouble.of(millimetres));
  }

  public RigBuilder largestPulseMillijoules(double millijoules) {
    largestPulse = OptionalDouble.of(millijoules);
    return this;
  }

  public RigBuilder lens(Optional<String> other) {
    lens = other;
    return this;
  }

  public RigBuilder checks(List<PowerCheck> all) {
    checks = all;
    return this;
  }

  /** Usual circumstances. */
  public RigBuilder usual(Circumstances circumstances) {
    usual = circumstances;
    return this;
  }

  /** Spot at focus and beam quality. */
  public RigBuilder optics(double focusSpotMillimetres, double beamQuality) {
    optics = new Optics(OptionalDouble.of(focusSpotMillimetres), OptionalDouble.of(beamQuality));
    return this;
  }

  public RigBuilder upkeep(List<Upkeep> all) {
    upkeep = all;
    return this;
  }

  public Rig build() {
    return new Rig(
        id,
        name,
        emission,
        ratedWatts,
        wavelengthNanometres,
        spotDefinition,
        spot,
        repetition,
        pulse,
        width,
        largestPulse,
        lens,
        usual,
        optics,
        checks,
        upkeep);
  }
}
