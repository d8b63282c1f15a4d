package charline.model;

import charline.exposure.Figure;
import charline.model.way.Coating;
import charline.model.way.Warmth;
import charline.model.way.Way;
import charline.model.way.WayDesign;
import charline.model.way.WaysTried;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The patches of one stratum, as the models take them.
 *
 * @param stratum what they have in common
 * @param patches one or more
 * @param acceptTint count a tint in the grain as cleared
 * @param asked the way of working that answers are to be for, as far as that was said
 */
public record Trials(Stratum stratum, List<Patch> patches, boolean acceptTint, Way asked) {
  public Trials {
    patches = List.copyOf(patches);
    if (patches.isEmpty()) {
      throw new IllegalArgumentException(
          "An analysis needs at least one patch; there is none for " + stratum.words() + ".");
    }
  }

  /** A look at every patch would take longer than much of what is looked up by trials. */
  @Override
  public int hashCode() {
    return 31 * stratum.hashCode() + patches.size();
  }

  /** Trials whose answers are for the way in which most of them were made. */
  public Trials(Stratum stratum, List<Patch> patches, boolean acceptTint) {
    this(stratum, patches, acceptTint, Way.UNSAID);
  }

  /** The same trials with tint counted one way or the other. */
  public Trials acceptingTint(boolean accept) {
    return new Trials(stratum, patches, accept, asked);
  }

  /** The same trials asked about another way of working. */
  public Trials asking(Way way) {
    return new Trials(stratum, patches, acceptTint, way);
  }

  /** Whether any patch was burned in a way of working, as far as that goes by name. */
  public boolean tried(Way way) {
    return WaysTried.among(patches, way);
  }

  /** Some of the same trials. */
  public Trials with(List<Patch> some) {
    return new Trials(stratum, some, acceptTint, asked);
  }

  /**
   * The coat that answers are for: as asked, else of the tone that most patches have (the paler of
   * equal ones, which is harder to lift) and of the geometric mean thickness of such coats.
   */
  public Coating coat() {
    Optional<Tone> tone = asked.coat().tone().or(this::usualTone);
    List<Patch> alike =
        patches.stream().filter(p -> tone.isEmpty() || p.finish().tone().equals(tone)).toList();
    OptionalDouble usual = WayDesign.meanLogThickness(alike);
    if (usual.isEmpty()) {
      usual = WayDesign.meanLogThickness(patches);
    }
    OptionalDouble thickness = asked.coat().thicknessMicrometres();
    return new Coating(
        tone,
        thickness.isPresent() || usual.isEmpty()
            ? thickness
            : OptionalDouble.of(Math.exp(usual.getAsDouble())));
  }

  /**
   * The way of working that answers are for: as asked, else the rig that most patches were burned
   * on, the figure and the rest that most of that rig's had, on the face, dry, with pulses and
   * moisture as in the middle of the trials.
   */
  public Way way() {
    List<Way> ways = patches.stream().map(Way::of).toList();
    Optional<String> rig =
        asked.rig().or(() -> usual(ways.stream().flatMap(w -> w.rig().stream())));
    List<Way> own = ways.stream().filter(w -> w.rig().equals(rig)).toList();
    Optional<Figure> figure =
        asked.figure().or(() -> usual(own.stream().map(Way::figure)).flatMap(f -> f));
    Optional<Warmth> warmth =
        asked.warmth().or(() -> usual(own.stream().flatMap(w -> w.warmth().stream())));
    return new Way(
        coat(),
        rig,
        figure,
        Optional.of(asked.placeOrFace()),
        asked.pulseNanoseconds(),
        warmth,
        Optional.of(asked.wetted().orElse(false)),
        asked.moisturePercent());
  }

  /** The most common of some values; of equally common ones the one seen last. */
  private static <T> Optional<T> usual(Stream<T> values) {
    Map<T, Integer> counts = new LinkedHashMap<>();
    values.forEach(
        value -> {
          int count = counts.getOrDefault(value, 0) + 1;
          counts.remove(value);
          counts.put(value, count);
        });
    return counts.entrySet().stream()
        .reduce((a, b) -> b.getValue() >= a.getValue() ? b : a)
        .map(Map.Entry::getKey);
  }

  /**
   * The same trials, if what is asked about was tried.
   *
   * @throws charline.refusal.Refusal naming what was tried
   */
  public Trials requireTried() {
    WaysTried.require(asked, stratum, patches);
    return this;
  }

  private Optional<Tone> usualTone() {
    return tones().entrySet().stream() // pale ones first
        .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
        .map(Map.Entry::getKey);
  }

  /** Patches of each tone, from pale to dark; those of unknown tone are left out. */
  public Map<Tone, Integer> tones() {
    Map<Tone, Integer> counts = new EnumMap<>(Tone.class);
    patches.stream()
        .flatMap(p -> p.finish().tone().stream())
        .forEach(tone -> counts.merge(tone, 1, Integer::sum));
    return counts;
  }

  /**
   * Values of the shifts of each patch, from those of the way that answers are for, in the order of
   * the patches; none where all were made in one way.
   */
  public List<double[]> waySteps(Event event) {
    return waySteps(event, patch -> true);
  }

  /** The same of some of the patches. */
  List<double[]> waySteps(Event event, Predicate<Patch> chosen) {
    WayDesign ways = ways(event);
    return patches.stream()
        .filter(chosen)
        .map(patch -> ways.step(ways.way(), Way.of(patch)))
        .toList();
  }

  /** Shifts that a model of this event has. */
  public WayDesign ways(Event event) {
    return WayDesign.of(patches, way(), event == Event.CLEARING);
  }

  /**
   * The patches burned with the rig, figure, place, rest and wetting that answers are for, as far
   * as char is told apart by them.
   */
  public List<Patch> inSameWay() {
    WayDesign ways = ways(Event.CHAR);
    return patches.stream().filter(patch -> ways.sameKind(Way.of(patch))).toList();
  }

  /** Middle of the patch sizes that were recorded, in cm²; empty where none was. */
  public OptionalDouble medianPatchSquareCentimetres() {
    double[] sizes =
        patches.stream()
            .flatMapToDouble(p -> p.areaSquareCentimetres().stream())
            .sorted()
            .toArray();
    int n = sizes.length;
    return n == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of((sizes[(n - 1) / 2] + sizes[n / 2]) / 2);
  }

  /** Plain counts. */
  public Evidence evidence() {
    return new Evidence(
        patches.size(),
        (int) patches.stream().map(p -> p.board().id()).distinct().count(),
        patches.stream().mapToInt(p -> p.readings().size()).sum(),
        (int) patches.stream().filter(p -> shows(p, Event.CHAR)).count(),
        (int) patches.stream().filter(p -> shows(p, Event.CLEARING)).count());
  }

  /** True if any reading of a patch shows the event. */
  public boolean shows(Patch patch, Event event) {
    return patch.readings().stream().anyMatch(r -> event.shownBy(r.outcome(), acceptTint));
  }

  /** Patches on which finish was seen to be left after some pass. */
  public int patchesSeenUncleared() {
    return (int)
        patches.stream()
            .filter(
                p ->
                    p.readings().stream()
                        .anyMatch(r -> !Event.CLEARING.shownBy(r.outcome(), acceptTint)))
            .count();
  }

  /** What every patch says of an event, in the order of the patches. */
  public List<CensoredPasses> censored(Event event) {
    return censored(event, patch -> true);
  }

  /** The same of some of the patches; the shifts stay those of all. */
  List<CensoredPasses> censored(Event event, Predicate<Patch> chosen) {
    Map<UUID, Integer> boards = new LinkedHashMap<>();
    WayDesign ways = ways(event);
    List<CensoredPasses> all = new ArrayList<>();
    for (Patch patch : patches) {
      if (chosen.test(patch)) {
        Board board = patch.board();
        int index = boards.computeIfAbsent(board.id(), id -> boards.size());
        all.add(CensoredPasses.of(patch, index, event, acceptTint, ways));
      }
    }
    return all;
  }

  /** F0: the geometric mean intensity over the patches, as a natural logarithm. */
  public double lnReferenceIntensity() {
    return patches.stream()
        .mapToDouble(p -> Math.log(p.exposure().intensity()))
        .average()
        .orElseThrow();
  }
}
