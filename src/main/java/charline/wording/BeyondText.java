package charline.wording;

import charline.exposure.Emission;
import charline.window.Beyond;
import java.util.List;
import java.util.stream.Collectors;

/** In what a setting lies outside the trials, in words. */
public final class BeyondText {
  private BeyondText() {}

  /** "a higher dose than any trial, more passes than any trial". */
  public static String of(List<Beyond> sides, Emission emission) {
    String intensity = emission == Emission.PULSED ? "fluence" : "irradiance";
    return sides.stream().map(side -> of(side, intensity)).collect(Collectors.joining(", "));
  }

  private static String of(Beyond side, String intensity) {
    return switch (side) {
      case HIGHER_DOSE -> "a higher dose than any trial";
      case LOWER_DOSE -> "a lower dose than any trial";
      case HIGHER_INTENSITY -> "a higher " + intensity + " than any trial";
      case LOWER_INTENSITY -> "a lower " + intensity + " than any trial";
      case MORE_PASSES -> "more passes than any trial";
      case FEWER_PASSES -> "fewer passes than any trial";
      case UNLIKE_MIX -> "a mix of dose, " + intensity + " and passes unlike any trial";
    };
  }
}
