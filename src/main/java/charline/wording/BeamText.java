package charline.wording;

import charline.exposure.AreaRate;
import charline.exposure.ContinuousBeam;
import charline.exposure.Head;
import charline.exposure.LineScan;
import charline.exposure.PulsedBeam;
import charline.exposure.Pulses;
import charline.exposure.ScanFigure;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.quantity.Figures;
import charline.trial.Patch;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The effect of one pass at a point on the wood, computed from the settings. */
public final class BeamText {
  private final Spot spot;
  private final AreaRate rate;
  private final Optional<Pulses> pulses;
  private final Optional<PulsedBeam> pulsed;
  private final Optional<ContinuousBeam> continuous;
  private final boolean scanner;
  private final Optional<ScanFigure> path;
  private final Optional<LineScan> lines;

  public BeamText(Patch patch) {
    Settings settings = patch.settings();
    double watts = patch.exposure().deliveredWatts();
    spot = settings.spot();
    rate = patch.exposure().areaRate();
    pulses = settings.pulses();
    pulsed = pulses.map(p -> new PulsedBeam(watts, hertz(p), spot));
    continuous =
        pulses.isPresent() ? Optional.empty() : Optional.of(new ContinuousBeam(watts, spot));
    Head head = patch.circumstances().head();
    scanner = settings.form() instanceof LineScan;
    path = head.path(settings.form());
    lines = head.lines(settings.form());
  }

  private static double hertz(Pulses pulses) {
    return 1000 * pulses.repetitionKilohertz();
  }

  /** Adds a line for each kind of number. */
  public Facts addTo(Facts facts) {
    facts
        .add("each pulse", pulsed.map(this::eachPulse))
        .add(
            "at its centre",
            continuous.map(
                beam -> Figures.three(beam.centreIrradianceWattsPerCm2()) + " W/cm2 irradiance"))
        .add(
            "on a point",
            pulsed.map(beam -> Figures.three(beam.pulsesPerPoint(rate)) + " pulses in one pass"))
        .add(
            "dwells",
            dwellMilliseconds().map(ms -> Figures.three(ms) + " ms on a point, each line"));
    ofLines().forEach(facts::add);
    return facts.add(
        "covers", Figures.three(rate.squareCentimetresPerMinute()) + " cm2/min in one pass");
  }

  /** How the spot runs and overlaps along its lines, by what it is about; empty if not known. */
  public Map<String, String> ofLines() {
    Map<String, String> facts = new LinkedHashMap<>();
    lines.filter(scan -> !scanner).ifPresent(scan -> facts.put("spot runs at", run(scan)));
    lines.ifPresent(scan -> facts.put("overlap", overlaps(scan)));
    rims().ifPresent(track -> facts.put("rims", hot(track)));
    return facts;
  }

  /** Puts the same numbers; what such a beam or pass does not have is null. */
  public void putInto(Json json) {
    json.put("area_rate_cm2_min", rate.squareCentimetresPerMinute())
        .put("pulse_energy_mj", pulsed.map(beam -> 1000 * beam.pulseEnergyJoules()))
        .put("pulse_peak_kw", peakKilowatts())
        .put("centre_fluence_j_cm2", pulsed.map(PulsedBeam::peakFluenceJoulesPerCm2))
        .put("pulses_per_point", pulsed.map(beam -> beam.pulsesPerPoint(rate)))
        .put("centre_irradiance_w_cm2", continuous.map(ContinuousBeam::centreIrradianceWattsPerCm2))
        .put("dwell_ms", dwellMilliseconds())
        .put("pulse_pitch_mm", pitchMillimetres())
        .put("pulse_overlap_pct", pulseOverlap().map(share -> 100 * share))
        .put("line_overlap_pct", lines.map(l -> 100 * l.lineOverlap(spot)))
        .put("spot_speed_mm_s", lines.map(LineScan::spotSpeedMillimetresPerSecond))
        .put("line_spacing_mm", lines.map(LineScan::lineSpacingMillimetres))
        .put("middle_dose_ratio", rims().map(track -> track.relativeDose(0)))
        .put("rim_dose_ratio", rims().map(track -> track.rimDose(spot)));
  }

  private Optional<ScanFigure.HotRims> rims() {
    return path.filter(ScanFigure.HotRims.class::isInstance).map(ScanFigure.HotRims.class::cast);
  }

  private String run(LineScan scan) {
    return "%s mm/s, %s %s mm apart"
        .formatted(
            Figures.three(scan.spotSpeedMillimetresPerSecond()),
            lineWord(),
            Figures.three(scan.lineSpacingMillimetres()));
  }

  private String lineWord() {
    return path.filter(ScanFigure.Circle.class::isInstance).isPresent() ? "turns" : "lines";
  }

  private String hot(ScanFigure.HotRims track) {
    return "%s times the mean dose along either rim, as wide as the spot; %s times in the middle"
        .formatted(Figures.two(track.rimDose(spot)), Figures.two(track.relativeDose(0)));
  }

  private String eachPulse(PulsedBeam beam) {
    return "%s mJ%s, %s J/cm2 at its centre"
        .formatted(
            Figures.three(1000 * beam.pulseEnergyJoules()),
            peakKilowatts().map(kw -> ", " + Figures.three(kw) + " kW at its top").orElse(""),
            Figures.three(beam.peakFluenceJoulesPerCm2()));
  }

  private String overlaps(LineScan scan) {
    String between = overlap(scan.lineOverlap(spot)) + " between " + lineWord();
    return pulseOverlap()
        .map(
            share ->
                "%s between pulses, %s mm apart; %s"
                    .formatted(
                        overlap(share), Figures.three(pitchMillimetres().orElseThrow()), between))
        .orElse(between);
  }

  /** "50 %", or "none (gaps of 20 % of the spot)" where the dots or lines do not meet. */
  private static String overlap(double share) {
    String percent = Figures.three(Math.abs(100 * share)) + " %";
    return share >= 0 ? percent : "none (gaps of %s of the spot)".formatted(percent);
  }

  private Optional<Double> peakKilowatts() {
    return pulsed
        .filter(beam -> pulses.orElseThrow().durationNanoseconds().isPresent())
        .map(
            beam ->
                beam.gaussianPeakPowerWatts(
                        1e-9 * pulses.orElseThrow().durationNanoseconds().getAsDouble())
                    / 1000);
  }

  private Optional<Double> pitchMillimetres() {
    return lines.flatMap(scan -> pulses.map(p -> scan.pulsePitchMillimetres(hertz(p))));
  }

  private Optional<Double> pulseOverlap() {
    return lines.flatMap(scan -> pulses.map(p -> scan.overlapAlongLine(hertz(p), spot)));
  }

  private Optional<Double> dwellMilliseconds() {
    return lines.flatMap(
        scan ->
            continuous.map(beam -> 1000 * beam.dwellSeconds(scan.spotSpeedMillimetresPerSecond())));
  }
}
