package charline.model.way;

import charline.exposure.Figure;
import charline.trial.Conditions;
import charline.trial.Patch;
import charline.trial.Place;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One way of working, as far as it is known or asked: what may make two passes of the same dose,
 * intensity and number do different things.
 *
 * @param coat the coat that is worked on
 * @param rig name of the rig
 * @param figure path that the head draws; empty where it was not noted
 * @param place where on the board
 * @param pulseNanoseconds pulse duration
 * @param warmth whether passes follow each other while the wood is hot
 * @param wetted whether the finish is wetted
 * @param moisturePercent moisture of the wood
 */
public record Way(
    Coating coat,
    Optional<String> rig,
    Optional<Figure> figure,
    Optional<Place> place,
    OptionalDouble pulseNanoseconds,
    Optional<Warmth> warmth,
    Optional<Boolean> wetted,
    OptionalDouble moisturePercent) {
  /** Nothing asked. */
  public static final Way UNSAID =
      new Way(
          Coating.UNSAID,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty());

  /** The way in which a patch was burned. */
  public static Way of(Patch patch) {
    Conditions conditions = patch.circumstances().conditions();
    return new Way(
        Coating.of(patch.finish()),
        Optional.of(patch.rig().name()),
        patch.manner().figure(),
        Optional.of(patch.manner().place()),
        patch.settings().pulses().isPresent()
            ? patch.settings().pulses().get().durationNanoseconds()
            : OptionalDouble.empty(),
        Warmth.of(conditions),
        conditions.wetted(),
        patch.board().moisturePercent());
  }

  /** The same on another coat. */
  public Way with(Coating other) {
    return new Way(other, rig, figure, place, pulseNanoseconds, warmth, wetted, moisturePercent);
  }

  /** The same on a rig. */
  public Way onRig(String name) {
    return new Way(
        coat, Optional.of(name), figure, place, pulseNanoseconds, warmth, wetted, moisturePercent);
  }

  /** The same with a figure, or with one that was not noted. */
  public Way with(Optional<Figure> other) {
    return new Way(coat, rig, other, place, pulseNanoseconds, warmth, wetted, moisturePercent);
  }

  /** The same on another place of the board. */
  public Way with(Place other) {
    return new Way(
        coat, rig, figure, Optional.of(other), pulseNanoseconds, warmth, wetted, moisturePercent);
  }

  /** The same with pulses of another duration. */
  public Way withPulses(OptionalDouble nanoseconds) {
    return new Way(coat, rig, figure, place, nanoseconds, warmth, wetted, moisturePercent);
  }

  /** The same with another rest between passes. */
  public Way with(Warmth other) {
    return new Way(
        coat, rig, figure, place, pulseNanoseconds, Optional.of(other), wetted, moisturePercent);
  }

  /** The same with the finish wetted, or dry. */
  public Way wetted(boolean wet) {
    return new Way(
        coat, rig, figure, place, pulseNanoseconds, warmth, Optional.of(wet), moisturePercent);
  }

  /** The same on wood of another moisture. */
  public Way withMoisture(OptionalDouble percent) {
    return new Way(coat, rig, figure, place, pulseNanoseconds, warmth, wetted, percent);
  }

  /** Where on the board: on the face where nothing else is said. */
  public Place placeOrFace() {
    return place.orElse(Place.FACE);
  }
}
