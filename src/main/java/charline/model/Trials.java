package charline.model;

import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * The patches of one stratum, as the models take them.
 *
 * @param stratum what they have in common
 * @param patches one or more
 * @param acceptTint count a tint in the grain as cleared
 * @param asked the coat that answers are to be for, as far as that was said
 */
public record Trials(Stratum stratum, List<Patch> patches, boolean acceptTint, Coating asked) {
  public Trials {
    patches = List.copyOf(patches);
    if (patches.isEmpty()) {
      throw new IllegalArgumentException(
          "An analysis needs at least one patch; there is none for " + stratum.words() + ".");
    }
    CoatsTried.require(asked, stratum, patches);
  }

  /** Trials whose answers are for the coat that most of them had. */
  public Trials(Stratum stratum, List<Patch> patches, boolean acceptTint) {
    this(stratum, patches, acceptTint, Coating.UNSAID);
  }

  /** The same trials with tint counted one way or the other. */
  public Trials acceptingTint(boolean accept) {
    return new Trials(stratum, patches, accept, asked);
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
    Optional<Tone> tone = asked.tone().or(this::usualTone);
    List<Patch> alike =
        patches.stream().filter(p -> tone.isEmpty() || p.finish().tone().equals(tone)).toList();
    OptionalDouble usual = CoatDesign.meanLog(CoatDesign.thicknesses(alike));
    if (usual.isEmpty()) {
      usual = CoatDesign.meanLog(CoatDesign.thicknesses(patches));
    }
    return new Coating(
        tone,
        asked.thicknessMicrometres().isPresent() || usual.isEmpty()
            ? asked.thicknessMicrometres()
            : OptionalDouble.of(Math.exp(usual.getAsDouble())));
  }

  private Optional<Tone> usualTone() {
    return tones().entrySet().stream()
        .max(
            Map.Entry.<Tone, Integer>comparingByValue()
                .thenComparing(Map.Entry.<Tone, Integer>comparingByKey().reversed()))
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
   * Values of the coat's terms of a patch, from those of the coat that answers are for; none where
   * all coats are alike.
   */
  public double[] coatStep(Patch patch, Event event) {
    CoatDesign coats = coats(event);
    double[] step = coats.row(Coating.of(patch.finish()));
    double[] from = coats.row(coats.coat());
    Arrays.setAll(step, k -> step[k] - from[k]);
    return step;
  }

  /** Terms of the coat that a model of this event has. */
  CoatDesign coats(Event event) {
    return event == Event.CLEARING ? CoatDesign.of(patches, coat()) : CoatDesign.ALIKE;
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

  /** The same of some of the patches; the coat's terms stay those of all. */
  List<CensoredPasses> censored(Event event, Predicate<Patch> chosen) {
    Map<UUID, Integer> boards = new LinkedHashMap<>();
    CoatDesign coats = coats(event);
    List<CensoredPasses> all = new ArrayList<>();
    for (Patch patch : patches) {
      if (chosen.test(patch)) {
        Board board = patch.board();
        int index = boards.computeIfAbsent(board.id(), id -> boards.size());
        all.add(CensoredPasses.of(patch, index, event, acceptTint, coats));
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
