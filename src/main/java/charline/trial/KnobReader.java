package charline.trial;

import static charline.quantity.Figures.plain;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.TimedStrokes;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Turns what a person typed for the knobs into settings, the same from an option, a tap or a cell.
 * A knob that was not given takes its value from the patch that is copied, if any, else from the
 * rig's usual settings. Which knobs are given decides the dose form.
 */
public final class KnobReader {
  /**
   * A patch that fills in for what was not given.
   *
   * @param patch its settings and rig count, and its code in sentences
   * @param typed what was typed for it, by key of the knob
   * @param itself true if it is the patch that is put right, so that strokes timed on it stay
   */
  public record Copied(Patch patch, Map<String, String> typed, boolean itself) {}

  /**
   * Something missing, unreadable or contradictory.
   *
   * @param knob where it is put right
   * @param sentence what must hold, what came, what to do
   */
  public record Problem(Knob knob, String sentence) {}

  /**
   * What came of reading.
   *
   * @param settings present if there were no problems
   * @param circumstances how the pass was made beside them, as far as it is known
   * @param size of the patch in cm2, if given or copied
   * @param typed what was typed, by key of the knob, copied texts included
   */
  public record Result(
      Optional<Settings> settings,
      Circumstances circumstances,
      OptionalDouble size,
      Map<String, String> typed,
      List<Problem> problems) {
    /** The settings, or the first problem as a refusal. */
    public Settings orRefuse() {
      return settings.orElseThrow(() -> Refusal.usage(problems.get(0).sentence()));
    }
  }

  /** Takes out a value that would be copied or is usual. */
  public static final String NONE = "none";

  /** Strokes say the same as a hand speed that is given with them, within 1 %. */
  private static final double SAME = 0.01;

  private final KnobDialect dialect;
  private final Map<Knob, String> given;
  private final Rig rig;
  private final Optional<Copied> copied;
  private final Map<Knob, Double> copiedValues;
  private final Map<Knob, Double> usual;
  private final Map<Knob, Double> values = new EnumMap<>(Knob.class);
  private final Map<Knob, Object> circumstances = new EnumMap<>(Knob.class);
  private final Map<String, String> typed = new HashMap<>();
  private final List<Problem> problems = new ArrayList<>();

  private KnobReader(
      KnobDialect dialect, Map<Knob, String> given, Rig rig, Optional<Copied> copied) {
    this.dialect = dialect;
    this.given = new EnumMap<>(Knob.class);
    this.given.putAll(given);
    this.rig = rig;
    this.copied = copied;
    copiedValues = copied.map(c -> KnobValues.of(c.patch().settings())).orElse(Map.of());
    usual = KnobValues.usualOf(rig);
  }

  /**
   * Reads settings.
   *
   * @param given what was typed, by knob; others are absent, and one that must be given and is not
   *     may be blank
   * @param rig the rig that they are dialled in on
   * @param copied patch whose values replace those not given
   */
  public static Result read(
      KnobDialect dialect, Map<Knob, String> given, Rig rig, Optional<Copied> copied) {
    return new KnobReader(dialect, given, rig, copied).result();
  }

  /** Says so if knobs of different dose forms are given at once. */
  public static Optional<Problem> contradiction(KnobDialect dialect, Map<Knob, String> given) {
    List<Knob> firsts =
        Arrays.stream(DoseKnobs.values())
            .flatMap(pair -> pair.both().stream().filter(given::containsKey).limit(1))
            .sorted()
            .toList();
    return firsts.size() < 2
        ? Optional.empty()
        : Optional.of(
            new Problem(
                firsts.get(firsts.size() - 1),
                "The dose must be given in one form: %s; %s are of different forms."
                    .formatted(
                        forms(dialect),
                        firsts.stream().map(dialect::name).collect(Collectors.joining(" and ")))));
  }

  /** "--hand with --width, --scan with --spacing, or --area with --seconds". */
  public static String forms(KnobDialect dialect) {
    return "%s with %s, %s with %s, or %s with %s"
        .formatted(
            dialect.name(Knob.HAND),
            dialect.name(Knob.WIDTH),
            dialect.name(Knob.SCAN),
            dialect.name(Knob.SPACING),
            dialect.name(Knob.AREA),
            dialect.name(Knob.SECONDS));
  }

  /** Whether a value of the copied patch that belongs to its head may stand on this rig. */
  public static boolean stays(Copied copied, Knob knob, Rig rig) {
    return copied.typed().containsKey(knob.key()) || copied.patch().rig().id().equals(rig.id());
  }

  private Result result() {
    circumstances();
    strokes();
    power();
    form();
    Optional<Spot> spot = defocusedSpot().or(this::copiedSpot);
    if (spot.isEmpty()) {
      ofHead(Knob.SPOT, "spot");
    }
    pulses();
    size();
    if (!problems.isEmpty()) {
      return new Result(
          Optional.empty(), Circumstances.UNKNOWN, OptionalDouble.empty(), typed, problems);
    }
    spot.ifPresent(s -> values.put(Knob.SPOT, s.diameterMillimetres()));
    Double size = values.get(Knob.PATCH_AREA);
    return new Result(
        Optional.of(
            KnobValues.settings(values, spot.map(Spot::definition).orElseGet(rig::spotDefinition))),
        Circumstances.of(circumstances),
        size == null ? OptionalDouble.empty() : OptionalDouble.of(size),
        typed,
        problems);
  }

  private void circumstances() {
    Map<Knob, Object> known = copied.map(c -> c.patch().circumstances().values()).orElse(Map.of());
    Map<Knob, Object> usualOnes = rig.usual().values();
    for (Knob knob : Knob.CIRCUMSTANCES) {
      boolean measured = knob == Knob.STROKES || knob == Knob.STROKE;
      boolean ofHead = Knob.USUAL_OF_RIG.contains(knob);
      if (given.containsKey(knob)) {
        String text = given.get(knob).strip();
        if (!text.isEmpty() && !isTakenOut(knob)) {
          typed.put(knob.key(), text);
          read(knob, text);
        }
      } else if (copied.isPresent() && (!ofHead || staysHere(knob))) {
        if (known.containsKey(knob) && !measured) {
          copyTyped(knob);
          circumstances.put(knob, known.get(knob));
        }
      } else if (usualOnes.containsKey(knob)) {
        circumstances.put(knob, usualOnes.get(knob));
      }
    }
  }

  private void read(Knob knob, String text) {
    try {
      circumstances.put(knob, knob.read(text, dialect));
    } catch (Refusal e) {
      problem(knob, e.getMessage());
    }
  }

  /** Strokes that were timed give the hand speed; on the same patch they stay until another is. */
  private void strokes() {
    boolean timedNow = given.containsKey(Knob.STROKES) || given.containsKey(Knob.STROKE);
    boolean paced =
        Stream.of(Knob.HAND, Knob.SCAN, Knob.SPACING, Knob.AREA, Knob.SECONDS)
            .anyMatch(given::containsKey);
    if (copied.filter(Copied::itself).isPresent() && (timedNow || !paced)) {
      Map<Knob, Object> timed = copied.get().patch().circumstances().values();
      for (Knob knob : List.of(Knob.STROKES, Knob.STROKE)) {
        if (timed.containsKey(knob) && !given.containsKey(knob)) {
          copyTyped(knob);
          circumstances.put(knob, timed.get(knob));
        }
      }
    }
    boolean times = circumstances.containsKey(Knob.STROKES);
    if (times != circumstances.containsKey(Knob.STROKE)) {
      circumstances.remove(Knob.STROKE);
      circumstances.remove(Knob.STROKES);
      if (problems.isEmpty() && !isTakenOut(Knob.STROKES) && !isTakenOut(Knob.STROKE)) {
        problem(
            times ? Knob.STROKE : Knob.STROKES,
            "Timed strokes need their times and the length of a stroke; give %s with %s."
                .formatted(dialect.name(Knob.STROKES), dialect.name(Knob.STROKE)));
      }
    } else if (times && timedNow) {
      paceOf(Circumstances.of(circumstances).strokes().orElseThrow());
    }
  }

  private boolean isTakenOut(Knob knob) {
    return given.getOrDefault(knob, "").strip().equalsIgnoreCase(NONE);
  }

  private void paceOf(TimedStrokes strokes) {
    double pace = strokes.handSpeedMillimetresPerSecond();
    values.put(Knob.HAND, pace);
    String said = given.put(Knob.HAND, "");
    if (said == null || said.isBlank()) {
      return;
    }
    typed.put(Knob.HAND.key(), said.strip());
    try {
      double hand = dialect.number(Knob.HAND, said);
      values.put(Knob.HAND, hand);
      if (Math.abs(Math.log(hand / pace)) > SAME) {
        problem(
            Knob.HAND,
            "Timed strokes make a hand speed of %s mm/s, not %s mm/s; leave out %s, or correct the strokes."
                .formatted(plain(pace), plain(hand), dialect.name(Knob.HAND)));
      }
    } catch (Refusal e) {
      problem(Knob.HAND, e.getMessage());
    }
  }

  /**
   * The spot that a defocus makes, where the rig's optics say it and nobody gave the spot. A
   * defocus that was copied made the spot that is copied with it.
   */
  private Optional<Spot> defocusedSpot() {
    boolean moved =
        given.containsKey(Knob.DEFOCUS)
            || typed.containsKey(Knob.DEFOCUS.key()) && !staysHere(Knob.SPOT);
    Double defocus = (Double) circumstances.get(Knob.DEFOCUS);
    return moved && defocus != null && !given.containsKey(Knob.SPOT)
        ? rig.focus().map(focus -> focus.at(defocus).as(rig.spotDefinition()))
        : Optional.empty();
  }

  private void power() {
    boolean percent = given.containsKey(Knob.POWER_PCT);
    boolean watts = given.containsKey(Knob.POWER_W);
    if (percent && watts) {
      problem(
          Knob.POWER_W,
          "Give %s or %s, not both; leave one of them out."
              .formatted(dialect.name(Knob.POWER_PCT), dialect.name(Knob.POWER_W)));
    } else if (percent || watts) {
      take(percent ? Knob.POWER_PCT : Knob.POWER_W);
    } else if (copied.isPresent()) {
      copy(copiedValues.containsKey(Knob.POWER_PCT) ? Knob.POWER_PCT : Knob.POWER_W);
    } else {
      problem(Knob.POWER_PCT, "%s is not set; give it in %% or W.".formatted(dialect.powerName()));
    }
  }

  private void form() {
    Optional<Problem> two = contradiction(dialect, given);
    if (two.isPresent()) {
      problems.add(two.get());
      return;
    }
    Optional<DoseKnobs> chosen =
        Arrays.stream(DoseKnobs.values())
            .filter(pair -> pair.both().stream().anyMatch(given::containsKey))
            .findFirst()
            .or(() -> copied.map(c -> formOf(c.patch())).map(DoseKnobs::of));
    if (chosen.isEmpty()) {
      problem(Knob.HAND, "The speed is missing: give %s.".formatted(forms(dialect)));
      return;
    }
    if (chosen.get() == DoseKnobs.HAND) {
      ofHead(Knob.WIDTH, "scan width");
      if (!values.containsKey(Knob.HAND)) {
        value(Knob.HAND);
      }
    } else {
      chosen.get().both().forEach(this::value);
    }
  }

  private static DoseForm formOf(Patch patch) {
    return patch.settings().form();
  }

  /** The copied spot as it was measured, where it may stand. */
  private Optional<Spot> copiedSpot() {
    if (given.containsKey(Knob.SPOT) || !staysHere(Knob.SPOT)) {
      return Optional.empty();
    }
    copyTyped(Knob.SPOT);
    return copied.map(c -> c.patch().settings().spot());
  }

  private void pulses() {
    if (rig.emission() == Emission.CONTINUOUS) {
      for (Knob knob : List.of(Knob.RATE, Knob.PULSE)) {
        if (given.containsKey(knob)) {
          problem(
              knob,
              "Rig %s is cw and has no pulses; leave out %s."
                  .formatted(rig.name(), dialect.name(knob)));
        }
      }
      return;
    }
    ofHead(Knob.RATE, "repetition rate");
    boolean known =
        given.containsKey(Knob.PULSE)
            || staysHere(Knob.PULSE) && copiedValues.containsKey(Knob.PULSE)
            || usual.containsKey(Knob.PULSE);
    if (known) {
      ofHead(Knob.PULSE, "pulse duration");
    }
  }

  private void size() {
    if (given.containsKey(Knob.PATCH_AREA)) {
      take(Knob.PATCH_AREA);
    } else {
      copyTyped(Knob.PATCH_AREA);
      copied
          .map(c -> c.patch().areaSquareCentimetres())
          .orElse(OptionalDouble.empty())
          .ifPresent(cm2 -> values.put(Knob.PATCH_AREA, cm2));
    }
  }

  private boolean staysHere(Knob knob) {
    return copied.filter(c -> stays(c, knob, rig)).isPresent();
  }

  /**
   * A value that belongs to the head. Another rig has another head: its own usual value counts,
   * unless the person typed the copied one.
   */
  private void ofHead(Knob knob, String words) {
    if (given.containsKey(knob) || staysHere(knob) || !copiedValues.containsKey(knob)) {
      value(knob);
    } else if (usual.containsKey(knob)) {
      values.put(knob, usual.get(knob));
    } else {
      Patch other = copied.orElseThrow().patch();
      problem(
          knob,
          "The %s is missing: that of %s belongs to rig %s, and rig %s has no usual one; give %s."
              .formatted(words, other.code(), other.rig().name(), rig.name(), dialect.name(knob)));
    }
  }

  private void value(Knob knob) {
    if (given.containsKey(knob)) {
      take(knob);
    } else if (copiedValues.containsKey(knob)) {
      copy(knob);
    } else if (usual.containsKey(knob)) {
      values.put(knob, usual.get(knob));
    } else {
      notSet(knob);
    }
  }

  private void notSet(Knob knob) {
    problem(
        knob,
        "%s is not set%s; give it in %s."
            .formatted(
                dialect.name(knob),
                isOfHead(knob) ? ", and rig %s has no usual one".formatted(rig.name()) : "",
                knob.unit()));
  }

  private static boolean isOfHead(Knob knob) {
    return knob == Knob.SPOT || knob == Knob.RATE || knob == Knob.PULSE || knob == Knob.WIDTH;
  }

  private void take(Knob knob) {
    String text = given.get(knob).strip();
    if (text.isEmpty()) {
      notSet(knob);
      return;
    }
    typed.put(knob.key(), text);
    try {
      values.put(knob, dialect.number(knob, text));
    } catch (Refusal e) {
      problem(knob, e.getMessage());
    }
  }

  private void copy(Knob knob) {
    copyTyped(knob);
    values.put(knob, copiedValues.get(knob));
  }

  private void copyTyped(Knob knob) {
    copied.map(c -> c.typed().get(knob.key())).ifPresent(text -> typed.put(knob.key(), text));
  }

  private void problem(Knob knob, String sentence) {
    problems.add(new Problem(knob, sentence));
  }
}
