package charline.model;

import charline.trial.DepthClash;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the trials say of the coat that cannot all be true. */
public sealed interface CoatContradiction {
  /** Fewer patches than this say little of a pace. */
  int FEWEST = 3;

  /** Paces of clearing and of the gauge that lie further apart than this factor contradict. */
  double FURTHEST = 1.5;

  /**
   * Patches whose depth does not go with the thickness of their coat, in one way.
   *
   * @param kind in what they differ
   * @param patches one or more, in the order of burning
   */
  record Depths(DepthClash.Kind kind, List<DepthClash> patches) implements CoatContradiction {
    public Depths {
      patches = List.copyOf(patches);
    }
  }

  /**
   * Depth per pass by the gauge is not what the coat's thickness and the passes to clear make it.
   *
   * @param patches patches with a depth, three or more
   * @param byGaugeMicrometres geometric mean of measured depth over passes, in µm per pass
   * @param byCoatMicrometres geometric mean over the same patches of thickness over the median
   *     passes that the removal model expects, in µm per pass
   */
  record Pace(int patches, double byGaugeMicrometres, double byCoatMicrometres)
      implements CoatContradiction {}

  /**
   * All of a stratum.
   *
   * @param patches its patches, in the order of burning
   * @param clearing their removal model
   */
  static List<CoatContradiction> in(List<Patch> patches, ModelFit clearing) {
    List<CoatContradiction> found = new ArrayList<>();
    List<DepthClash> clashes =
        patches.stream().map(DepthClash::of).flatMap(Optional::stream).toList();
    for (DepthClash.Kind kind : DepthClash.Kind.values()) {
      List<DepthClash> alike = clashes.stream().filter(c -> c.kind() == kind).toList();
      if (!alike.isEmpty()) {
        found.add(new Depths(kind, alike));
      }
    }
    pace(patches, clearing).ifPresent(found::add);
    return List.copyOf(found);
  }

  private static Optional<Pace> pace(List<Patch> patches, ModelFit clearing) {
    OptionalDouble coat = clearing.coat().thicknessMicrometres();
    List<Patch> measured =
        patches.stream()
            .filter(p -> p.finish().thicknessMicrometres().equals(coat))
            .filter(p -> perPassByGauge(p).isPresent())
            .toList();
    if (coat.isEmpty() || measured.size() < FEWEST) {
      return Optional.empty();
    }
    DoseLimit half = clearing.posterior().doseLimit(0.5);
    double gauge = 0;
    double expected = 0;
    int count = 0;
    for (Patch patch : measured) {
      double passes =
          half.passes(
                  Math.log(patch.exposure().doseJoulesPerCm2()),
                  Math.log(patch.exposure().intensity()))
              .median();
      if (passes > 1) { // one pass clears: it would have removed more than the coat
        gauge += Math.log(perPassByGauge(patch).getAsDouble());
        expected += Math.log(coat.getAsDouble() / passes);
        count++;
      }
    }
    if (count < FEWEST || Math.abs(gauge - expected) / count <= Math.log(FURTHEST)) {
      return Optional.empty();
    }
    return Optional.of(new Pace(count, Math.exp(gauge / count), Math.exp(expected / count)));
  }

  /** Depth over passes at the last reading with finish left that has one, in µm per pass. */
  static OptionalDouble perPassByGauge(Patch patch) {
    OptionalDouble last = OptionalDouble.empty();
    for (Reading reading : patch.readings()) {
      OptionalDouble depth = reading.depthMicrometres();
      if (!reading.outcome().cleared(true) && depth.isPresent() && depth.getAsDouble() > 0) {
        last = OptionalDouble.of(depth.getAsDouble() / reading.passes());
      }
    }
    return last;
  }
}
