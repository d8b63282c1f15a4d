package charline.model.check;

import charline.model.Event;
import charline.quantity.Figures;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers and events as the findings tell them. */
final class FitWords {
  private FitWords() {}

  static String model(Event event) {
    return event == Event.CHAR ? "burn-onset" : "removal";
  }

  static String done(Event event) {
    return event == Event.CHAR ? "charred" : "cleared";
  }

  /** Three digits, whole from 100 up. */
  static String three(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return Figures.plain(
        (Math.abs(value) >= 100
                ? exact.setScale(0, RoundingMode.HALF_UP)
                : exact.round(new MathContext(3, RoundingMode.HALF_UP)))
            .doubleValue());
  }

  /** "5.2 to 8.1", or one number where both are told alike. */
  static String range(double low, double high) {
    return three(low).equals(three(high)) ? three(low) : three(low) + " to " + three(high);
  }

  /** An expected count, to a tenth. */
  static String count(double expected) {
    return Figures.plain(Math.round(expected * 10) / 10.0);
  }

  static String patches(int n) {
    return n == 1 ? "1 patch" : n + " patches";
  }

  static String passes(int n) {
    return n == 1 ? "1 pass" : n + " passes";
  }

  /** A chance in percent: one digit below 10, never a false zero. */
  static String percent(double share) {
    if (share < 0.0001) {
      return "under 0.01 %";
    }
    double value = 100 * share;
    double grain = value < 0.1 ? 100 : value < 10 ? 10 : 1;
    return Figures.plain(Math.round(value * grain) / grain) + " %";
  }
}
