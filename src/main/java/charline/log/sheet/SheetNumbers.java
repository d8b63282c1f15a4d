package charline.log.sheet;

import charline.quantity.Measure;
import charline.refusal.Refusal;
import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Numbers in cells: read with the unit a person typed, written so that they read back equal. */
final class SheetNumbers {
  private static final Pattern BARE = Pattern.compile("[-+]?[0-9]*[.,]?[0-9]+(?:[eE][-+]?[0-9]+)?");
  private static final Pattern GROUPED = Pattern.compile("[-+]?[0-9]{1,3}(?:,[0-9]{3})+\\D*");

  private SheetNumbers() {}

  /**
   * The number in a cell, empty if the cell is.
   *
   * @param commaSeparates true where a comma in a number is no sure sign of decimals
   * @throws Refusal in one sentence
   */
  static OptionalDouble parse(Column column, String text, boolean commaSeparates) {
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (commaSeparates && GROUPED.matcher(text).matches()) {
      throw Refusal.usage(
          "%s of %s can be read in two ways; write it without a comma."
              .formatted(column.words(), text));
    }
    // Where a comma cannot stand between cells it is one of decimals, as 12,125 in many countries.
    String plain = commaSeparates ? text : text.replace(',', '.');
    double value = column.knob().checked(Measure.parse(plain, column.quantity()).value());
    return OptionalDouble.of(value);
  }

  /** True for a number without a unit. */
  static boolean isBare(String text) {
    return BARE.matcher(text.strip()).matches();
  }

  /** What the person typed, with the column's unit where they left the unit to the heading. */
  static String typed(Column column, String text) {
    return column.isNumber() && BARE.matcher(text).matches()
        ? text + column.quantity().base()
        : text;
  }

  /**
   * What to write for a value: what was typed where that still says the same, without a unit that
   * the heading has; otherwise the number.
   */
  static String cell(Column column, double value, String typed) {
    if (typed != null && says(column, typed, value)) {
      String base = column.quantity().base();
      String bare =
          typed.endsWith(base) ? typed.substring(0, typed.length() - base.length()) : typed;
      return BARE.matcher(bare).matches() ? bare : typed;
    }
    return text(value);
  }

  /** The shortest plain decimal that reads back as the same number. */
  static String text(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  /** True if two numbers are the same but for rounding. */
  static boolean same(double a, double b) {
    return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
  }

  static boolean same(OptionalDouble a, OptionalDouble b) {
    return a.isPresent() == b.isPresent()
        && (a.isEmpty() || same(a.getAsDouble(), b.getAsDouble()));
  }

  private static boolean says(Column column, String typed, double value) {
    try {
      return same(parse(column, typed, true).orElse(Double.NaN), value);
    } catch (Refusal e) {
      return false;
    }
  }
}
