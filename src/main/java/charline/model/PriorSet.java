package charline.model;

import charline.exposure.Emission;

/**
 * The priors of both events under both kinds of light.
 *
 * @param pulsedChar char under pulses
 * @param pulsedClearing clearing under pulses
 * @param continuousChar char under continuous light
 * @param continuousClearing clearing under continuous light
 */
public record PriorSet(
    Prior pulsedChar, Prior pulsedClearing, Prior continuousChar, Prior continuousClearing) {
  /** Those used unless others are given. */
  public static final PriorSet USUAL =
      new PriorSet(
          Prior.usual(Event.CHAR, Emission.PULSED),
          Prior.usual(Event.CLEARING, Emission.PULSED),
          Prior.usual(Event.CHAR, Emission.CONTINUOUS),
          Prior.usual(Event.CLEARING, Emission.CONTINUOUS));

  /** The same priors under either light. */
  public static PriorSet alike(Prior charring, Prior clearing) {
    return new PriorSet(charring, clearing, charring, clearing);
  }

  /** The prior of one event under one kind of light. */
  public Prior of(Event event, Emission emission) {
    boolean pulsed = emission == Emission.PULSED;
    return switch (event) {
      case CHAR -> pulsed ? pulsedChar : continuousChar;
      case CLEARING -> pulsed ? pulsedClearing : continuousClearing;
    };
  }

  /** The same with one of them replaced. */
  public PriorSet with(Event event, Emission emission, Prior other) {
    boolean pulsed = emission == Emission.PULSED;
    return switch (event) {
      case CHAR ->
          pulsed
              ? new PriorSet(other, pulsedClearing, continuousChar, continuousClearing)
              : new PriorSet(pulsedChar, pulsedClearing, other, continuousClearing);
      case CLEARING ->
          pulsed
              ? new PriorSet(pulsedChar, other, continuousChar, continuousClearing)
              : new PriorSet(pulsedChar, pulsedClearing, continuousChar, other);
    };
  }

  /** The same with another prior of the spread between boards for one event, under any light. */
  public PriorSet with(Event event, SpreadPrior boards) {
    PriorSet changed = this;
    for (Emission emission : Emission.values()) {
      changed = changed.with(event, emission, of(event, emission).with(boards));
    }
    return changed;
  }

  /** The same centres with every spread so many times as large. */
  public PriorSet widened(double factor) {
    return new PriorSet(
        pulsedChar.widened(factor),
        pulsedClearing.widened(factor),
        continuousChar.widened(factor),
        continuousClearing.widened(factor));
  }
}
