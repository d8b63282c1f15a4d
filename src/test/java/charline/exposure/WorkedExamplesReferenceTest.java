package charline.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * Worked examples computed by hand to six digits from published definitions, named at each test:
 * energy, fluence and power after ISO 11145; beam widths and propagation after ISO 11146-1.
 */
class WorkedExamplesReferenceTest {
  private static final Spot HALF_MILLIMETRE = new Spot(0.5, SpotDefinition.ONE_OVER_E_SQUARED);

  /** Half a unit in the sixth significant digit. */
  private static Offset<Double> sixDigits(double value) {
    return within(0.5000001 * Math.pow(10, Math.floor(Math.log10(Math.abs(value))) - 5));
  }

  private static void is(double ours, double expected) {
    assertThat(ours).isCloseTo(expected, sixDigits(expected));
  }

  /** Definitions of ISO 11145; 0.939437 is the peak of a Gaussian pulse of unit energy and FWHM. */
  @Test
  void a_pulse_of_200_W_at_20_kHz() {
    PulsedBeam beam = new PulsedBeam(200, 20_000, HALF_MILLIMETRE);
    is(beam.pulseEnergyJoules() * 1000, 10.0000);
    is(beam.spot().areaSquareCentimetres(), 0.00196350);
    is(beam.meanFluenceJoulesPerCm2(), 5.09296);
    is(beam.peakFluenceJoulesPerCm2(), 10.1859);
    is(beam.gaussianPeakPowerWatts(100e-9), 93_943.7);
  }

  /** Geometry of an area scan; the dose must equal fluence times pulses per point. */
  @Test
  void lines_at_5000_mm_per_second_and_a_tenth_of_a_millimetre() {
    LineScan lines = new LineScan(5000, 0.1);
    is(lines.pulsePitchMillimetres(20_000), 0.250000);
    is(lines.overlapAlongLine(20_000, HALF_MILLIMETRE), 0.500000);
    is(lines.pulsesPerSpot(20_000, HALF_MILLIMETRE), 2.00000);
    is(lines.lineOverlap(HALF_MILLIMETRE), 0.800000);
    is(lines.linesPerSpot(HALF_MILLIMETRE), 5.00000);
    PulsedBeam beam = new PulsedBeam(200, 20_000, HALF_MILLIMETRE);
    double pulsesPerPoint = beam.pulsesPerPoint(lines.areaRate());
    is(pulsesPerPoint, 7.85398);
    double dose = lines.dosePerPassJoulesPerCm2(200);
    is(dose, 40.0000);
    assertThat(beam.meanFluenceJoulesPerCm2() * pulsesPerPoint).isCloseTo(dose, within(1e-9));
    is(lines.areaRate().squareCentimetresPerSecond(), 5.00000);
    is(lines.areaRate().squareMetresPerHour(), 1.80000);
  }

  /** Hand-held pass: dose is power over width times hand speed. */
  @Test
  void a_hand_pass_of_300_W() {
    HandPass pass = new HandPass(60, 30);
    is(pass.dosePerPassJoulesPerCm2(300), 16.6667);
    is(3 * pass.dosePerPassJoulesPerCm2(300), 50.0000);
    LineScan lines = pass.linesOf(new ScanFigure.OneWayLines(60, 150, 1));
    is(lines.spotSpeedMillimetresPerSecond(), 9000.00);
    is(lines.lineSpacingMillimetres(), 0.200000);
    Spot spot = new Spot(1, SpotDefinition.ONE_OVER_E_SQUARED);
    PulsedBeam beam = new PulsedBeam(300, 25_000, spot);
    is(beam.pulseEnergyJoules() * 1000, 12.0000);
    is(beam.meanFluenceJoulesPerCm2(), 1.52789);
    is(beam.pulsesPerPoint(lines.areaRate()), 10.9083);
    is(beam.pulsesPerPoint(pass.areaRate()), 10.9083);
    is(pass.areaRate().squareCentimetresPerSecond(), 18.0000);
    is(pass.areaRate().squareMetresPerHour(), 6.48000);
    is(pass.areaRate().netOf(3).squareMetresPerHour(), 2.16000);
  }

  /** Plain arithmetic: 25 cm2 in 4 s is 6.25 cm2/s, at 100 W 16 J/cm2. */
  @Test
  void a_marked_area_timed_by_the_clock() {
    TimedArea timed = new TimedArea(25, 4);
    is(timed.areaRate().squareCentimetresPerSecond(), 6.25000);
    is(timed.areaRate().squareCentimetresPerMinute(), 375.000);
    is(timed.dosePerPassJoulesPerCm2(100), 16.0000);
  }

  /** Kinematics of a polygon: the line is drawn in the lit part of its time. */
  @Test
  void one_way_lines_lit_for_four_fifths_of_the_time() {
    is(new ScanFigure.OneWayLines(60, 150, 0.8).meanSpotSpeedMillimetresPerSecond(), 11_250.0);
  }

  /** Kinematics of a sinusoid; 40.9666 % of the time is spent in the outer tenths of the width. */
  @Test
  void a_sinusoidal_sweep() {
    ScanFigure.Sinusoid sweep = new ScanFigure.Sinusoid(60, 75);
    is(sweep.meanSpotSpeedMillimetresPerSecond(), 9000.00);
    is(sweep.peakSpeedMillimetresPerSecond(), 14_137.2);
    is(sweep.rootMeanSquareSpeedMillimetresPerSecond(), 9996.49);
    is(sweep.relativeDose(0), 0.63662);
    is(sweep.relativeDose(0.8), 1.06103);
    is(100 * sweep.timeShareInOuter(0.2), 40.9666);
    is(new ScanFigure.TriangleSweep(60, 75).meanSpotSpeedMillimetresPerSecond(), 9000.00);
    is(sweep.linesPerSecond(), 150);
  }

  /** Kinematics of a circle carried forward. */
  @Test
  void a_circle_carried_along() {
    ScanFigure.Circle circle = new ScanFigure.Circle(20, 100);
    is(circle.meanSpotSpeedMillimetresPerSecond(), 6283.19);
    is(circle.advancePerTurnMillimetres(20), 0.200000);
    is(circle.pass(20).linesOf(circle).lineSpacingMillimetres(), 0.200000);
    double dose = circle.pass(20).dosePerPassJoulesPerCm2(200);
    is(dose, 50.0000);
    is(dose * circle.relativeDose(0), 31.8310);
    is(dose * circle.relativeDose(0.8), 53.0516);
  }

  /** Continuous wave: irradiance of ISO 11145. */
  @Test
  void a_continuous_beam_of_1500_W() {
    ContinuousBeam beam =
        new ContinuousBeam(1500, new Spot(0.8, SpotDefinition.ONE_OVER_E_SQUARED));
    is(beam.dwellSeconds(8000) * 1000, 0.100000);
    is(beam.meanIrradianceWattsPerCm2(), 298_416);
    is(beam.centreIrradianceWattsPerCm2(), 596_831);
    is(new LineScan(8000, 0.25).dosePerPassJoulesPerCm2(1500), 75.0000);
  }

  /** Beam propagation of ISO 11146-1 with M2. */
  @Test
  void a_spot_out_of_focus() {
    Focus focus = new Focus(0.4, 20, 1.064);
    is(focus.rayleighLengthMillimetres(), 5.90525);
    is(focus.at(3).diameterMillimetres(), 0.448658);
    is(focus.at(5).diameterMillimetres(), 0.524123);
    is(focus.at(10).diameterMillimetres(), 0.786652);
    is(focus.relativeFluence(3), 0.794858);
    is(focus.relativeFluence(5), 0.582442);
    is(focus.relativeFluence(10), 0.258556);
  }

  /** Arithmetic of a quote: 4.5 m2 at 6.48 m2/h a pass, three passes, 60 % hand efficiency. */
  @Test
  void hours_of_a_job() {
    is(new AreaRate(18).netOf(3).hoursFor(4.5, 0.6), 3.47222);
  }

  /** Tilt: fluence falls by the cosine. */
  @Test
  void a_head_tilted_by_30_degrees() {
    PulsedBeam square = new PulsedBeam(200, 20_000, HALF_MILLIMETRE);
    PulsedBeam tilted = new PulsedBeam(200, 20_000, HALF_MILLIMETRE.tilted(30));
    is(tilted.meanFluenceJoulesPerCm2() / square.meanFluenceJoulesPerCm2(), 0.866025);
  }

  /** Gaussian beam widths: 1/e is smaller by √2, FWHM is 0.588705 of 1/e2 (ISO 11146-1 for D4σ). */
  @Test
  void one_beam_under_four_definitions() {
    Spot spot = new Spot(1, SpotDefinition.ONE_OVER_E_SQUARED);
    is(spot.as(SpotDefinition.FULL_WIDTH_HALF_MAXIMUM).diameterMillimetres(), 0.588705);
    is(spot.as(SpotDefinition.ONE_OVER_E).diameterMillimetres(), 0.707107);
    is(spot.as(SpotDefinition.D4_SIGMA).diameterMillimetres(), 1.00000);
    assertThat(spot.as(SpotDefinition.ONE_OVER_E).areaSquareCentimetres())
        .isCloseTo(spot.areaSquareCentimetres(), within(1e-15));
  }
}
