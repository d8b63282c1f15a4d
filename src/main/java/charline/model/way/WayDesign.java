package charline.model.way;

import charline.trial.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Which shifts a model has, and their values for a way of working. Tone counts half up for pale and
 * half down for dark, thickness and pulse duration by their logarithms about the geometric mean. A
 * coat of unknown tone counts as mid, one of unknown thickness as the mean.
 *
 * @param factors none where all trials were made in one way
 * @param lnReferenceThickness natural logarithm of the mean thickness in µm; empty where most
 *     coats' is unknown, or where thickness does not count
 * @param way the way that the answer is for
 * @param leftOut in what else the trials differ
 */
public record WayDesign(
    List<Factor> factors, OptionalDouble lnReferenceThickness, Way way, List<LeftOut> leftOut) {
  /** One way only. */
  public static final WayDesign ALIKE =
      new WayDesign(List.of(), OptionalDouble.empty(), Way.UNSAID, List.of());

  /** Neither gauge nor dial tells values closer than this apart (common practice). */
  private static final double CLEARLY_MORE = 1.1;

  /** A pin meter is off by a point or two (common practice, no published source). */
  private static final double CLEARLY_WETTER_POINTS = 4;

  private static final int FEWEST_BOARDS_OF_MOISTURE = 3;
  private static final int MOST_LEVELS = 4;
  private static final int MOST_COLUMNS = 6;
  private static final double ROUNDING = 1e-9;

  /** Why a difference has no shift of its own. */
  public enum Why {
    /** It always goes together with something that has one. */
    GOES_WITH_OTHERS,
    /** The trials differ in too much. */
    TOO_MUCH_DIFFERS
  }

  /** A difference between the trials that has no shift. */
  public record LeftOut(Trait trait, Why why) {}

  public WayDesign {
    factors = List.copyOf(factors);
    leftOut = List.copyOf(leftOut);
  }

  /**
   * @param patches patches of a stratum
   * @param way what the answer is for
   * @param coatMatters false for char, which the coat does not shift
   */
  public static WayDesign of(List<Patch> patches, Way way, boolean coatMatters) {
    List<Way> ways = patches.stream().map(Way::of).toList();
    double[] known = thicknesses(patches);
    boolean thicknessKnown = coatMatters && 2 * known.length > patches.size();
    List<Factor> factors = new ArrayList<>();
    if (coatMatters) {
      tone(ways).ifPresent(factors::add);
      if (thicknessKnown) {
        measured(Trait.THICKNESS, ways, Math.log(CLEARLY_MORE)).ifPresent(factors::add);
      }
    }
    List<LeftOut> leftOut = new ArrayList<>();
    addShifts(patches, ways, factors, leftOut);
    return new WayDesign(
        factors, thicknessKnown ? meanLog(known) : OptionalDouble.empty(), way, leftOut);
  }

  private static void addShifts(
      List<Patch> patches, List<Way> ways, List<Factor> factors, List<LeftOut> leftOut) {
    Span span = new Span(ways.size());
    int columns = factors.stream().mapToInt(Factor::width).sum();
    List<Factor> differing =
        Stream.of(
                named(Trait.RIG, ways),
                named(Trait.FIGURE, ways),
                named(Trait.PLACE, ways),
                measured(Trait.PULSE, ways, Math.log(CLEARLY_MORE)),
                eitherOr(Trait.WARMTH, ways),
                eitherOr(Trait.WETTED, ways),
                moisture(patches, ways))
            .flatMap(Optional::stream)
            .toList();
    for (Factor factor : differing) {
      if (columns + factor.width() > MOST_COLUMNS) {
        leftOut.add(new LeftOut(factor.trait(), Why.TOO_MUCH_DIFFERS));
      } else if (span.holds(factor, ways)) {
        leftOut.add(new LeftOut(factor.trait(), Why.GOES_WITH_OTHERS));
      } else {
        span.add(factor, ways);
        factors.add(factor);
        columns += factor.width();
      }
    }
  }

  private static Optional<Factor> tone(List<Way> ways) {
    return ways.stream().flatMap(w -> w.coat().tone().stream()).distinct().count() > 1
        ? Optional.of(unbounded(Trait.TONE, 0))
        : Optional.empty();
  }

  private static Factor unbounded(Trait trait, double reference) {
    return new Factor.Measured(
        trait, reference, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  }

  /** Names by falling count, the rarest pooled. */
  private static Optional<Factor> named(Trait trait, List<Way> ways) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    ways.forEach(w -> counts.merge(trait.name(w), 1, Integer::sum));
    if (counts.size() < 2) {
      return Optional.empty();
    }
    List<String> levels = new ArrayList<>(counts.keySet());
    // By name where counts are equal, so that the order of burning changes no digit.
    Collections.sort(levels);
    levels.sort((a, b) -> Integer.compare(counts.get(b), counts.get(a)));
    if (levels.size() > MOST_LEVELS) {
      List<String> kept = new ArrayList<>(levels.subList(0, MOST_LEVELS - 1));
      kept.add(Factor.OTHERS);
      levels = kept;
    }
    return Optional.of(new Factor.Named(trait, levels));
  }

  /** A number that most patches have and that differs by more than a step. */
  private static Optional<Factor> measured(Trait trait, List<Way> ways, double step) {
    double[] known = ways.stream().flatMapToDouble(w -> trait.value(w).stream()).sorted().toArray();
    if (2 * known.length <= ways.size() || known[known.length - 1] - known[0] <= step) {
      return Optional.empty();
    }
    double mean = Arrays.stream(known).average().orElseThrow();
    return Optional.of(
        trait == Trait.THICKNESS
            ? unbounded(trait, mean)
            : new Factor.Measured(trait, mean, known[0], known[known.length - 1]));
  }

  private static Optional<Factor> eitherOr(Trait trait, List<Way> ways) {
    return ways.stream().flatMapToDouble(w -> trait.value(w).stream()).distinct().count() > 1
        ? Optional.of(unbounded(trait, 0))
        : Optional.empty();
  }

  private static Optional<Factor> moisture(List<Patch> patches, List<Way> ways) {
    long boards =
        patches.stream()
            .filter(p -> p.board().moisturePercent().isPresent())
            .map(p -> p.board().id())
            .distinct()
            .count();
    return boards < FEWEST_BOARDS_OF_MOISTURE
        ? Optional.empty()
        : measured(Trait.MOISTURE, ways, CLEARLY_WETTER_POINTS / Trait.MOISTURE_POINTS);
  }

  /** Known thicknesses in µm, rising. */
  static double[] thicknesses(List<Patch> patches) {
    return patches.stream()
        .flatMapToDouble(p -> p.finish().thicknessMicrometres().stream())
        .sorted()
        .toArray();
  }

  private static OptionalDouble meanLog(double[] values) {
    return Arrays.stream(values).map(Math::log).average();
  }

  /** Natural logarithm of the geometric mean thickness in µm of the coats that have one. */
  public static OptionalDouble meanLogThickness(List<Patch> patches) {
    return meanLog(thicknesses(patches));
  }

  /** The same for another way of working. */
  public WayDesign with(Way other) {
    return new WayDesign(factors, lnReferenceThickness, other, leftOut);
  }

  /** Number of columns. */
  public int width() {
    return factors.stream().mapToInt(Factor::width).sum();
  }

  /** Values of all columns for a way of working. */
  public double[] row(Way of) {
    return factors.stream().flatMapToDouble(f -> Arrays.stream(f.row(of))).toArray();
  }

  /** Values of all columns for one way of working, from those of another. */
  public double[] step(Way from, Way to) {
    double[] step = row(to);
    double[] start = row(from);
    Arrays.setAll(step, k -> step[k] - start[k]);
    return step;
  }

  /**
   * Whether two patches were made in one way, but for a coat that is no harder to lift on the
   * first.
   *
   * @param one values of all columns
   * @param other the same
   */
  public boolean noHarder(double[] one, double[] other) {
    int k = 0;
    for (Factor factor : factors) {
      for (int end = k + factor.width(); k < end; k++) {
        if (factor.trait().ofCoat() ? one[k] > other[k] : one[k] != other[k]) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * Whether a way of working has the rig, figure, place, rest and wetting that the answer is for,
   * as far as there are shifts for them; what was not noted counts as the same.
   */
  public boolean sameKind(Way of) {
    return factors.stream()
        .filter(factor -> factor.trait().ofKind())
        .allMatch(
            factor ->
                Arrays.equals(factor.row(of), factor.row(way))
                    || !factor.trait().named() && factor.row(of)[0] == 0);
  }

  /** Whether there is a shift for a trait. */
  public boolean has(Trait trait) {
    return factors.stream().anyMatch(f -> f.trait() == trait);
  }

  /** What columns can tell apart, with a constant. */
  private static final class Span {
    private final List<double[]> basis = new ArrayList<>();

    Span(int size) {
      double[] ones = new double[size];
      Arrays.fill(ones, 1 / Math.sqrt(size));
      basis.add(ones);
    }

    boolean holds(Factor factor, List<Way> ways) {
      return columns(factor, ways).stream()
          .allMatch(c -> norm(beside(c)) <= ROUNDING * ways.size());
    }

    void add(Factor factor, List<Way> ways) {
      for (double[] column : columns(factor, ways)) {
        double[] rest = beside(column);
        double norm = norm(rest);
        if (norm > ROUNDING * ways.size()) {
          Arrays.setAll(rest, i -> rest[i] / Math.sqrt(norm));
          basis.add(rest);
        }
      }
    }

    private static List<double[]> columns(Factor factor, List<Way> ways) {
      List<double[]> columns = new ArrayList<>();
      for (int k = 0; k < factor.width(); k++) {
        int at = k;
        columns.add(ways.stream().mapToDouble(w -> factor.row(w)[at]).toArray());
      }
      return columns;
    }

    private double[] beside(double[] column) {
      double[] rest = column.clone();
      for (double[] unit : basis) {
        double share = 0;
        for (int i = 0; i < rest.length; i++) {
          share += unit[i] * rest[i];
        }
        for (int i = 0; i < rest.length; i++) {
          rest[i] -= share * unit[i];
        }
      }
      return rest;
    }

    private static double norm(double[] of) {
      return Arrays.stream(of).map(v -> v * v).sum();
    }
  }
}
