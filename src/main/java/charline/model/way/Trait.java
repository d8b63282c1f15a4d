package charline.model.way;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What of a way of working moves the dose that chars or clears, each with the prior of its weight
 * in ln dose. A trait enters a model only where the trials of a stratum differ in it.
 */
public enum Trait {
  /**
   * Pale against dark, mid half-way: pale coats take two to four times what dark ones do (common
   * practice, no published source). This prior gives that 60 %, with heavy tails: looks are only a
   * stand-in for what a coat takes up of the beam, and a prior that gave it 85 % held on to its
   * three in simulated trials whose truth was two or six.
   */
  TONE("tone", new HeavyTailedNormal(Math.log(3), 0.35)),

  /**
   * Weight of ln thickness: 1 where every joule lifts its share of the film, less where a film
   * comes off in one piece from below, more where fume and darkened residue shade the rest (own
   * reasoning, no published source).
   */
  THICKNESS("thickness", new HeavyTailedNormal(0.85, 0.3)),

  /** Difference of any two rigs: meters, lenses and beams that are called alike are not. */
  RIG("rig", new HeavyTailedNormal(0, Factor.ALIKE)),

  /** Difference of any two figures. */
  FIGURE("figure", new HeavyTailedNormal(0, Factor.ALIKE)),

  /** Difference of any two places: an arris takes the beam from two sides, end grain drinks. */
  PLACE("place", new HeavyTailedNormal(0, Factor.ALIKE)),

  /** Weight of ln pulse duration: heat goes deeper with its square root, fluence stays. */
  PULSE("pulse duration", new HeavyTailedNormal(0, 0.25)),

  /** Cooled against hot wood. */
  WARMTH("rest", new HeavyTailedNormal(0, Factor.ALIKE)),

  /** Wetted against dry. */
  WETTED("wetting", new HeavyTailedNormal(0, Factor.ALIKE)),

  /** Weight of five points of moisture: water takes its part of the heat. */
  MOISTURE("moisture", new HeavyTailedNormal(0, 0.1));

  /** Points of moisture that weigh one. */
  static final double MOISTURE_POINTS = 5;

  private final String word;
  private final HeavyTailedNormal prior;

  Trait(String word, HeavyTailedNormal prior) {
    this.word = word;
    this.prior = prior;
  }

  public String word() {
    return word;
  }

  /** Prior of the weight, or of the difference of any two names. */
  public HeavyTailedNormal prior() {
    return prior;
  }

  /** Whether it is of the coat, which matters to clearing and not to char. */
  public boolean ofCoat() {
    return this == TONE || this == THICKNESS;
  }

  /** Whether it goes by name, and not by a number. */
  boolean named() {
    return this == RIG || this == FIGURE || this == PLACE;
  }

  /** Whether two ways have the same or not, without a more or less. */
  boolean ofKind() {
    return named() || this == WARMTH || this == WETTED;
  }

  /** The name that a way has; figures that were not noted have one too. */
  String name(Way way) {
    return switch (this) {
      case RIG -> way.rig().orElse("");
      case FIGURE -> way.figure().map(f -> f.word()).orElse(Factor.NOT_NOTED);
      case PLACE -> way.placeOrFace().word();
      default -> throw new IllegalStateException(word + " has no name.");
    };
  }

  /** The number that a way has, in units of the weight; empty where it is not known. */
  OptionalDouble value(Way way) {
    return switch (this) {
      case TONE -> OptionalDouble.of(Coating.paleness(way.coat().tone()));
      case THICKNESS -> logarithm(way.coat().thicknessMicrometres());
      case PULSE -> logarithm(way.pulseNanoseconds());
      case WARMTH -> half(way.warmth().map(w -> w == Warmth.COOLED));
      // Hardly anybody notes that a finish was dry.
      case WETTED -> half(Optional.of(way.wetted().orElse(false)));
      case MOISTURE ->
          way.moisturePercent().isPresent()
              ? OptionalDouble.of(way.moisturePercent().getAsDouble() / MOISTURE_POINTS)
              : OptionalDouble.empty();
      default -> throw new IllegalStateException(word + " is no number.");
    };
  }

  private static OptionalDouble logarithm(OptionalDouble of) {
    return of.isPresent() ? OptionalDouble.of(Math.log(of.getAsDouble())) : of;
  }

  private static OptionalDouble half(Optional<Boolean> yes) {
    return yes.isPresent() ? OptionalDouble.of(yes.get() ? 0.5 : -0.5) : OptionalDouble.empty();
  }
}
