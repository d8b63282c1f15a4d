package charline.model.classical;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.model.classical.AblationOutcome.NoAblation;
import charline.stat.interval.FiellerSet;
import charline.stat.linear.LineFit;
import charline.stat.linear.StraightLine;
import charline.trial.Mark;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The ablation law by least squares on ln fluence.
 *
 * <p>The response is depth per pulse: depth so far over passes and over the pulses that a point
 * gets in a pass, D/F. Depth per pass would do only if every patch had been gone over at one speed:
 * a slower hand puts more pulses on a point and takes more off at the same fluence, which has
 * nothing to do with the threshold. Readings count while residue is left, as a coat that is through
 * yields no more; of each patch the last such reading does, so that points are independent and the
 * error of the gauge is shared by the most passes.
 *
 * @param confidence two-sided, between 0 and 1
 */
public record AblationRegression(double confidence) {
  private static final double STILL = 0.005;

  /** 90 %, as the posterior's intervals have it. */
  public static AblationRegression withDefaults() {
    return new AblationRegression(ClassicalRegression.LIMITS);
  }

  private record Point(double fluence, double pulses, double depthPerPulse) {}

  /** Fits the law; empty where no depth was noted at all. */
  public Optional<AblationOutcome> fit(List<Patch> patches) {
    boolean noted =
        patches.stream()
            .flatMap(p -> p.readings().stream())
            .anyMatch(r -> r.depthMicrometres().isPresent());
    if (!noted) {
      return Optional.empty();
    }
    if (patches.get(0).rig().emission() != Emission.PULSED) {
      return Optional.of(
          new NoAblation(
              0,
              "The ablation law is one of single pulses, so depths of a CW rig are not fitted."));
    }
    List<Point> points = patches.stream().flatMap(p -> point(p).stream()).toList();
    return Optional.of(line(points));
  }

  private static Optional<Point> point(Patch patch) {
    List<Reading> usable =
        patch.readings().stream()
            .filter(r -> r.depthMicrometres().isPresent())
            .filter(r -> r.outcome().marks().contains(Mark.RESIDUE))
            .toList();
    if (usable.isEmpty()) {
      return Optional.empty();
    }
    Reading last = usable.get(usable.size() - 1);
    Exposure exposure = patch.exposure();
    double pulses = exposure.doseJoulesPerCm2() / exposure.intensity();
    return Optional.of(
        new Point(
            exposure.intensity(),
            pulses,
            last.depthMicrometres().getAsDouble() / (last.passes() * pulses)));
  }

  private AblationOutcome line(List<Point> points) {
    if (points.size() < 3) {
      return new NoAblation(
          points.size(),
          "The ablation law needs depths on 3 patches or more that still had residue, but there %s %d; measure more."
              .formatted(points.size() == 1 ? "is" : "are", points.size()));
    }
    double lowest = points.stream().mapToDouble(Point::fluence).min().orElseThrow();
    double highest = points.stream().mapToDouble(Point::fluence).max().orElseThrow();
    if (Math.log(highest / lowest) < STILL) {
      return new NoAblation(
          points.size(),
          "The ablation law needs depths at more than one fluence, but all %d were measured at %s J/cm2; change the power."
              .formatted(points.size(), Columns.figure(highest)));
    }
    LineFit line =
        StraightLine.fit(
            points.stream().mapToDouble(p -> Math.log(p.fluence())).toArray(),
            points.stream().mapToDouble(Point::depthPerPulse).toArray());
    if (!(line.slope() > 0)) {
      return new NoAblation(
          points.size(),
          "Depth per pulse must rise with fluence for the ablation law, but over %d patches from %s to %s J/cm2 it does not; measure further apart or check the gauge."
              .formatted(points.size(), Columns.figure(lowest), Columns.figure(highest)));
    }
    LineFit.Crossing crossing = line.crossing(confidence).orElseThrow();
    return new AblationFit(
        points.size(),
        lowest,
        highest,
        line.slope(),
        line.slopeStandardError(),
        Math.exp(crossing.x()),
        limits(crossing, line),
        confidence,
        crossing.fieller().g(),
        line.residualStandardDeviation(),
        line.rSquared(),
        points.stream().mapToDouble(Point::pulses).min().orElseThrow(),
        points.stream().mapToDouble(Point::pulses).max().orElseThrow());
  }

  private static Limits limits(LineFit.Crossing crossing, LineFit line) {
    if (line.residualSumOfSquares() <= 1e-20 * line.totalSumOfSquares()) { // no scatter at all
      double threshold = Math.exp(crossing.x());
      return new Limits(OptionalDouble.of(threshold), OptionalDouble.of(threshold));
    }
    if (crossing.fieller() instanceof FiellerSet.Finite finite) {
      return new Limits(
          OptionalDouble.of(Math.exp(finite.lower())), OptionalDouble.of(Math.exp(finite.upper())));
    }
    return new Limits(
        OptionalDouble.empty(),
        crossing.fieller() instanceof FiellerSet.Exclusive exclusive
                && crossing.x() <= exclusive.below()
            ? OptionalDouble.of(Math.exp(exclusive.below()))
            : OptionalDouble.empty());
  }
}
