package charline.trial;

import static charline.quantity.Figures.plain;

import charline.exposure.Settings;
import charline.trial.Plausibility.Doubt;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What a rig has been dialled to so far: its patches and its usual settings. A value far from all
 * of them is asked about, as a unit or a point may have slipped: 0.6 cm for 0.6 mm is no absurd
 * spot, but on a rig whose spot is always 0.6 mm it is a slip (common practice, no published
 * source).
 */
public final class UsualValues {
  /**
   * Beyond this factor a value is far. Of ten, as a slipped point makes, a range takes its part.
   */
  private static final double FAR = 3;

  /** The same where fewer patches than {@link #SOME} show how widely the rig is used. */
  private static final double FAR_FROM_FEW = 5;

  private static final int SOME = 3;

  /** Groups of at most this share of the patches stray, larger ones are another way of working. */
  private static final double MINORITY = 0.2;

  private static final int MANY_PASSES = 10;

  private final Rig rig;
  private final Map<Knob, NavigableMap<Double, Integer>> counts = new EnumMap<>(Knob.class);
  private int patches;

  public UsualValues(Rig rig) {
    this.rig = rig;
  }

  /**
   * Takes in what patches had.
   *
   * @param value in the unit of the knob
   * @param count how many patches had it
   */
  public void add(Knob knob, double value, int count) {
    counts.computeIfAbsent(knob, k -> new TreeMap<>()).merge(value, count, Integer::sum);
  }

  /** Takes in how many patches these are. */
  public void addPatches(int count) {
    patches += count;
  }

  /** Takes in one patch with all that it had. */
  public void add(Patch patch) {
    addPatches(1);
    values(patch.settings(), patch.areaSquareCentimetres()).forEach((k, v) -> add(k, v, 1));
    add(Knob.PASSES, patch.lastReading().passes(), 1);
  }

  /** The numbers of a patch that are compared, by knob. */
  public static Map<Knob, Double> values(Settings settings, OptionalDouble patchArea) {
    Map<Knob, Double> values = new EnumMap<>(KnobValues.of(settings));
    patchArea.ifPresent(cm2 -> values.put(Knob.PATCH_AREA, cm2));
    return values;
  }

  /**
   * Doubts about settings that are far from everything so far.
   *
   * @param patchArea size of the patch in cm², if known
   */
  public List<Doubt> doubts(Settings settings, OptionalDouble patchArea) {
    List<Doubt> doubts = new ArrayList<>();
    values(settings, patchArea)
        .forEach(
            (knob, value) -> {
              NavigableMap<Double, Integer> known = known(knob, false);
              double far = patches < SOME ? FAR_FROM_FEW : FAR;
              if (!known.isEmpty()
                  && (value > known.lastKey() * far || value < known.firstKey() / far)) {
                doubts.add(new Doubt(knob, far(knob, value, known)));
              }
            });
    return doubts;
  }

  /** A doubt about more passes than anybody makes with this rig. */
  public List<Doubt> doubtsOfPasses(int passes) {
    NavigableMap<Double, Integer> known = known(Knob.PASSES, false);
    return !known.isEmpty() && passes > MANY_PASSES && passes > FAR * known.lastKey()
        ? List.of(new Doubt(Knob.PASSES, far(Knob.PASSES, passes, known)))
        : List.of();
  }

  /**
   * Values that stray from the rest: few patches had them, and they are far from all others.
   *
   * @return the doubt about each, by knob and value
   */
  public Map<Knob, Map<Double, Doubt>> strays() {
    Map<Knob, Map<Double, Doubt>> strays = new EnumMap<>(Knob.class);
    for (Knob knob : counts.keySet()) {
      if (knob == Knob.PASSES) {
        continue; // more passes are made on a patch as it needs them
      }
      NavigableMap<Double, Integer> known = known(knob, true);
      int all = known.values().stream().mapToInt(c -> c).sum();
      List<NavigableMap<Double, Integer>> groups = groups(known);
      NavigableMap<Double, Integer> main = new TreeMap<>(known);
      groups.stream()
          .filter(g -> isFew(g, all))
          .flatMap(g -> g.keySet().stream())
          .forEach(main::remove);
      for (NavigableMap<Double, Integer> group : groups) {
        if (isFew(group, all) && !main.isEmpty()) {
          group
              .keySet()
              .forEach(
                  value ->
                      strays
                          .computeIfAbsent(knob, k -> new TreeMap<>())
                          .put(value, new Doubt(knob, far(knob, value, main))));
        }
      }
    }
    return strays;
  }

  private static boolean isFew(NavigableMap<Double, Integer> group, int all) {
    int count = group.values().stream().mapToInt(c -> c).sum();
    return all > SOME && count <= Math.max(1, MINORITY * all);
  }

  /** Values with no gap of more than {@link #FAR} between them. */
  private static List<NavigableMap<Double, Integer>> groups(NavigableMap<Double, Integer> values) {
    List<NavigableMap<Double, Integer>> groups = new ArrayList<>();
    double before = 0;
    for (Map.Entry<Double, Integer> value : values.entrySet()) {
      if (groups.isEmpty() || value.getKey() > FAR * before) {
        groups.add(new TreeMap<>());
      }
      groups.get(groups.size() - 1).put(value.getKey(), value.getValue());
      before = value.getKey();
    }
    return groups;
  }

  /**
   * Values so far, with the rig's usual one.
   *
   * @param heavily count the usual one as often as all others together, as somebody set it up
   */
  private NavigableMap<Double, Integer> known(Knob knob, boolean heavily) {
    NavigableMap<Double, Integer> known = new TreeMap<>(counts.getOrDefault(knob, new TreeMap<>()));
    Double usual = KnobValues.usualOf(rig).get(knob);
    if (usual != null) {
      int others = known.values().stream().mapToInt(c -> c).sum();
      known.merge(usual, heavily ? Math.max(SOME, others) : 1, Integer::sum);
    }
    return known;
  }

  private String far(Knob knob, double value, NavigableMap<Double, Integer> known) {
    String unit = knob.unit().isEmpty() ? "" : " " + knob.unit();
    boolean one = known.firstKey().equals(known.lastKey());
    return "%s of %s%s is far from what rig %s had so far (%s%s)"
        .formatted(
            knob.words(),
            plain(value),
            unit,
            rig.name(),
            one
                ? plain(known.firstKey())
                : plain(known.firstKey()) + " to " + plain(known.lastKey()),
            unit);
  }
}
