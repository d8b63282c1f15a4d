package charline.quote;

import charline.exposure.AreaRate;
import java.util.List;
import java.util.Optional;

/**
 * What a job takes, in hours, with its parts. All hours are rounded to hundredths, the ends
 * outward, so that the parts as printed add up to the sum as printed.
 *
 * @param areaSquareMetres area of the job
 * @param parts what the time on site is made of
 * @param secondPerson hours of a second person beside the first, if there is one
 * @param basis what it was worked out from
 */
public record Quote(
    double areaSquareMetres, List<Part> parts, Optional<Span> secondPerson, Basis basis) {

  /**
   * One part of the time.
   *
   * @param task what is done
   * @param hours how long
   */
  public record Part(Task task, Span hours) {}

  /**
   * What a quote was worked out from.
   *
   * @param quoting area, factors and times of a day
   * @param onePass area rate of one pass, overlap of strokes taken off
   * @param passes whole passes over the job: the high end is where the window's do not do
   * @param spots charred spots on the job: none, the mean of the models, their upper bound
   * @param days on site, each with its set-up, waste and fire watch
   */
  public record Basis(Quoting quoting, AreaRate onePass, Counts passes, Span spots, Counts days) {}

  public Quote {
    parts = List.copyOf(parts);
  }

  /** Hours that one person is on site; the ends add up as if all went well, or none did. */
  public Span onSite() {
    return parts.stream().map(Part::hours).reduce(Span.NONE, Span::plusExactly);
  }

  /** Hours of everybody. */
  public Span total() {
    return onSite().plusExactly(secondPerson.orElse(Span.NONE));
  }

  /** The price, as far as rates are known; empty where none is. */
  public Optional<Price> price(Rates rates) {
    return Price.of(this, rates);
  }

  /**
   * Hours over the work with the beam on and the handling between: area x passes / (rate of one
   * pass x hand efficiency).
   *
   * @param areaSquareMetres area of the job, above 0
   * @param onePass area rate of one pass
   * @param passes passes over all of it, 1 or more
   * @param handEfficiency share of the time in which the beam works, above 0 and up to 1
   */
  public static double workHours(
      double areaSquareMetres, AreaRate onePass, int passes, double handEfficiency) {
    return onePass.netOf(passes).hoursFor(areaSquareMetres, handEfficiency);
  }
}
