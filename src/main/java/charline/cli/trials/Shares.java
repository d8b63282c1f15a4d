package charline.cli.trials;

import charline.cli.command.TypedValues;
import charline.quantity.Figures;

/** Shares with limits, as typed. */
final class Shares {
  private Shares() {}

  static double inside(String option, String text, double low, double high) {
    double share = TypedValues.chance(option, text);
    double rounding = 1e-12; // 99.9 % is a little more than 0.999 once it is divided
    if (!(share >= low - rounding && share <= high + rounding)) {
      throw TypedValues.refused(
          option,
          "the share must be between %s and %s %%, not \"%s\"."
              .formatted(Figures.plain(100 * low), Figures.plain(100 * high), text.strip()));
    }
    return Math.max(low, Math.min(high, share));
  }
}
