package charline.quote;

import charline.exposure.AreaRate;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import java.util.List;

/**
 * What a job will take, in hours, with its parts.
 *
 * @param areaSquareMetres area of the job
 * @param parts what the time is made of
 * @param basis what it was worked out from
 */
public record Quote(double areaSquareMetres, List<Part> parts, Basis basis) {
  /**
   * Hours as a range.
   *
   * @param low where all goes well
   * @param usual to be expected
   * @param high where it does not
   */
  public record Hours(double low, double usual, double high) {
    public Hours {
      if (!(0 <= low && low <= usual && usual <= high)) {
        throw Refusal.usage(
            "Hours must not fall from the low to the high end, as %s, %s, %s do."
                .formatted(Figures.plain(low), Figures.plain(usual), Figures.plain(high)));
      }
    }

    Hours fromMinutes() {
      return new Hours(low / 60, usual / 60, high / 60);
    }

    Hours times(double factor) {
      return new Hours(low * factor, usual * factor, high * factor);
    }

    Hours times(Counts counts) {
      return new Hours(low * counts.low(), usual * counts.usual(), high * counts.high());
    }
  }

  /** How often something is done: where all goes well, to be expected, where it does not. */
  public record Counts(int low, int usual, int high) {
    static Counts of(int known) {
      return new Counts(known, known, known);
    }

    Counts less(int fewer) {
      return new Counts(low - fewer, usual - fewer, high - fewer);
    }
  }

  /**
   * One part of the time.
   *
   * @param task what is done
   * @param hours how long
   */
  public record Part(Task task, Hours hours) {}

  /** What takes time. */
  public enum Task {
    BEAM,
    COOLING,
    TEST_PATCHES,
    SET_UP,
    MASKING,
    FIRE_WATCH
  }

  /**
   * What a quote was worked out from.
   *
   * @param quoting area, factors and times of a day
   * @param onePass area rate of one pass
   * @param passes whole passes over the job: the high end is where the window's do not do
   * @param days with the beam at work, each with its set-up and fire watch
   */
  public record Basis(Quoting quoting, AreaRate onePass, Counts passes, Counts days) {}

  public Quote {
    parts = List.copyOf(parts);
  }

  /** All parts together; the ends add up as if all went well, or none did. */
  public Hours total() {
    double low = 0;
    double usual = 0;
    double high = 0;
    for (Part part : parts) {
      low += part.hours().low();
      usual += part.hours().usual();
      high += part.hours().high();
    }
    return new Hours(low, usual, high);
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
