package charline.model;

import charline.trial.Patch;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which terms of the coat the removal model has, and their values: tone counts half up for pale and
 * half down for dark, thickness by its logarithm about the geometric mean. A coat of unknown tone
 * counts as mid, one of unknown thickness as the mean.
 *
 * @param terms none where all coats are alike
 * @param lnReferenceThickness natural logarithm of the mean thickness in µm; empty where most
 *     coats' is unknown, or where thickness does not count
 * @param coat the coat that the answer is for
 */
public record CoatDesign(List<CoatTerm> terms, OptionalDouble lnReferenceThickness, Coating coat) {
  static final CoatDesign ALIKE = new CoatDesign(List.of(), OptionalDouble.empty(), Coating.UNSAID);

  /** A gauge does not tell thicknesses closer than this apart (common practice). */
  private static final double CLEARLY_THICKER = 1.1;

  public CoatDesign {
    terms = List.copyOf(terms);
  }

  /**
   * @param patches patches of a stratum
   * @param coat what the answer is for
   */
  static CoatDesign of(List<Patch> patches, Coating coat) {
    List<CoatTerm> terms = new ArrayList<>();
    if (patches.stream().flatMap(p -> p.finish().tone().stream()).distinct().count() > 1) {
      terms.add(CoatTerm.TONE);
    }
    double[] known = thicknesses(patches);
    if (2 * known.length <= patches.size()) {
      return new CoatDesign(terms, OptionalDouble.empty(), coat);
    }
    if (ratio(known) > CLEARLY_THICKER) {
      terms.add(CoatTerm.THICKNESS);
    }
    return new CoatDesign(terms, meanLog(known), coat);
  }

  /** Known thicknesses in µm, rising. */
  static double[] thicknesses(List<Patch> patches) {
    return patches.stream()
        .flatMapToDouble(p -> p.finish().thicknessMicrometres().stream())
        .sorted()
        .toArray();
  }

  static OptionalDouble meanLog(double[] values) {
    return java.util.Arrays.stream(values).map(Math::log).average();
  }

  private static double ratio(double[] rising) {
    return rising[rising.length - 1] / rising[0];
  }

  /** Values of the terms for a coat. */
  double[] row(Coating of) {
    return terms.stream()
        .mapToDouble(
            term ->
                switch (term) {
                  case TONE -> paleness(of.tone());
                  case THICKNESS ->
                      of.thicknessMicrometres().isPresent()
                          ? Math.log(of.thicknessMicrometres().getAsDouble())
                              - lnReferenceThickness.getAsDouble()
                          : 0;
                })
        .toArray();
  }

  /**
   * The prior that these coats begin with: where their thicknesses differ, its middle is moved with
   * the weight of thickness as that is found; where all are alike, with what is known beforehand.
   */
  Prior startingFrom(Prior prior) {
    return terms.contains(CoatTerm.THICKNESS) ? prior : prior.forCoats(lnReferenceThickness);
  }

  /** Half up for pale, half down for dark. */
  public static double paleness(Optional<Tone> tone) {
    return tone.map(t -> t == Tone.PALE ? 0.5 : t == Tone.DARK ? -0.5 : 0).orElse(0.0);
  }
}
