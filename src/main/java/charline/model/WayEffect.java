package charline.model;

import charline.model.way.Factor;
import charline.model.way.Trait;
import charline.model.way.Way;
import charline.model.way.WayDesign;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How much a trait of the way of working was found to count.
 *
 * @param trait what differs
 * @param level the name whose dose is compared with that of the way that the answer is for; empty
 *     where the trait goes by number
 * @param weight in ln dose: of that name over the answer's, of a pale coat over a dark one, of
 *     cooled wood over hot, of a wetted finish over a dry one, of five points of moisture, or of ln
 *     thickness or ln pulse duration
 */
public record WayEffect(Trait trait, Optional<String> level, Estimate weight) {
  /** All that a posterior found. */
  static List<WayEffect> of(WayDesign ways, Posterior posterior) {
    List<WayEffect> effects = new ArrayList<>();
    int from = 0;
    for (Factor factor : ways.factors()) {
      effects.addAll(of(factor, from, ways.way(), ways.width(), posterior));
      from += factor.width();
    }
    return List.copyOf(effects);
  }

  private static List<WayEffect> of(
      Factor factor, int from, Way answered, int width, Posterior posterior) {
    if (!(factor instanceof Factor.Named names)) {
      double[] one = new double[width];
      one[from] = 1;
      return List.of(new WayEffect(factor.trait(), Optional.empty(), posterior.shiftEstimate(one)));
    }
    double[] own = names.row(answered);
    List<WayEffect> effects = new ArrayList<>();
    for (String level : names.others(answered)) {
      double[] step = new double[width];
      double[] row = names.row(level);
      for (int k = 0; k < row.length; k++) {
        step[from + k] = row[k] - own[k];
      }
      effects.add(new WayEffect(factor.trait(), Optional.of(level), posterior.shiftEstimate(step)));
    }
    return effects;
  }

  /**
   * The weight as a factor on dose: of that name over the answer's, pale over dark, cooled over
   * hot, wetted over dry, five points of moisture, or twice as thick or as long over once.
   */
  public Estimate factor() {
    double per = trait == Trait.THICKNESS || trait == Trait.PULSE ? Math.log(2) : 1;
    return new Estimate(
        Math.exp(per * weight.median()),
        Math.exp(per * weight.low()),
        Math.exp(per * weight.high()));
  }
}
