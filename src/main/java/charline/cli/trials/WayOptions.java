package charline.cli.trials;

import charline.cli.command.TypedValues;
import charline.exposure.Figure;
import charline.model.way.Coating;
import charline.model.way.Warmth;
import charline.model.way.Way;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.trial.Place;
import charline.trial.Tone;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** In which way the work is done that an answer is for: each only in a way that was tried. */
final class WayOptions {
  @Option(
      names = "--tone",
      paramLabel = "TONE",
      description =
          "Tone of the outermost coat that the answer is for: pale, mid or dark. Matters if the"
              + " trials mix tones. Default: that of most patches.")
  private String tone;

  @Option(
      names = "--thickness",
      paramLabel = "UM",
      description =
          "Thickness of all coats that the answer is for, in um. Matters if recorded thicknesses"
              + " differ. Default: the middle of those tried.")
  private String thickness;

  @Option(
      names = "--figure",
      paramLabel = "FIGURE",
      description =
          "Scan figure that the answer is for, such as line or circle. Default: that of most of the"
              + " rig's patches.")
  private String figure;

  @Option(
      names = "--place",
      paramLabel = "PLACE",
      description =
          "Place on the board that the answer is for: face, arris, end grain, moulding or knot."
              + " Patches there are counted only if you ask. Default: face.")
  private String place;

  @Option(
      names = "--rest",
      paramLabel = "TIME",
      description =
          "Rest between passes that the answer is for, in s; under 10 s the wood stays hot. Matters"
              + " if the trials rested differently. Default: as most of the patches.")
  private String rest;

  @Option(names = "--wetted", description = "Answer for a finish that is wetted. Default: dry.")
  private boolean wetted;

  /** The way that was asked for, as far as it was said. */
  Way way() {
    Way asked =
        Way.UNSAID
            .with(
                new Coating(
                    Optional.ofNullable(tone).map(Tone::ofWord),
                    TypedValues.ifGiven("--thickness", thickness, Quantity.THICKNESS)))
            .with(Optional.ofNullable(figure).map(Figure::ofWord))
            .with(place == null ? Place.FACE : Place.ofWord(place));
    OptionalDouble seconds = TypedValues.ifGiven("--rest", rest, Quantity.TIME);
    if (seconds.isPresent()) {
      Invariant.notNegative("--rest", seconds.getAsDouble(), "s");
      asked = asked.with(Warmth.after(seconds.getAsDouble()));
    }
    return wetted ? asked.wetted(true) : asked;
  }
}
