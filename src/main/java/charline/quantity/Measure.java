package charline.quantity;

import charline.refusal.Refusal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with its unit as a person types it: {@code 30mm/s}, {@code 1.2in/s}, {@code 3.5mil},
 * {@code 48ft2}. Without a unit it is in the base unit of its quantity.
 *
 * @param value in the quantity's base unit
 * @param typed what was typed, trimmed
 */
public record Measure(double value, String typed) {
  private static final Pattern FORM =
      Pattern.compile("([-+]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][-+]?\\d+)?)\\s*(\\S*)");

  /** Groups of three digits behind commas, and what follows; no such number begins with a zero. */
  private static final Pattern THOUSANDS =
      Pattern.compile("([-+]?[1-9]\\d{0,2}(?:,\\d{3})+)(?!\\d|,\\d)(.*)");

  private static final String NUMBER = "A number";

  /** A kind of quantity with its base unit and the other units it may be typed in. */
  public enum Quantity {
    POWER("A power", "W", Map.of("kW", 1e3)),
    SHARE("A percentage", "%", Map.of()),
    RATE("A repetition rate", "kHz", Map.of("Hz", 1e-3, "MHz", 1e3)),
    PULSE_DURATION("A pulse duration", "ns", Map.of("ps", 1e-3, "us", 1e3, "µs", 1e3)),
    PULSE_ENERGY("A pulse energy", "mJ", Map.of("uJ", 1e-3, "µJ", 1e-3, "J", 1e3)),
    LENGTH(
        "A length",
        "mm",
        Map.of(
            "cm", 10.0, "m", 1e3, "um", 1e-3, "µm", 1e-3, "in", 25.4, "mil", 0.0254, "mils",
            0.0254)),
    THICKNESS("A coat thickness", "um", Map.of("µm", 1.0, "mm", 1e3, "mil", 25.4, "mils", 25.4)),
    SPEED("A speed", "mm/s", Map.of("cm/s", 10.0, "m/s", 1e3, "in/s", 25.4, "m/min", 1000.0 / 60)),
    AREA("An area", "cm2", Map.of("mm2", 0.01, "m2", 1e4, "in2", 6.4516, "ft2", 929.0304)),
    SURFACE("An area", "m2", Map.of("cm2", 1e-4, "in2", 6.4516e-4, "ft2", 0.09290304)),
    MINUTES("A time", "min", Map.of("s", 1 / 60.0, "h", 60.0)),
    TIME("A time", "s", Map.of("ms", 1e-3, "min", 60.0, "h", 3600.0)),
    WAVELENGTH("A wavelength", "nm", Map.of("um", 1e3, "µm", 1e3)),
    FREQUENCY("A number per second", "/s", Map.of("Hz", 1.0, "kHz", 1e3, "/min", 1 / 60.0)),
    TEMPERATURE("A temperature", "C", Map.of("°C", 1.0, "F", 5 / 9.0, "°F", 5 / 9.0));

    /** Degrees Fahrenheit at 0 degrees Celsius. */
    private static final double FREEZING = 32;

    private final String words;
    private final String base;
    private final Map<String, Double> toBase = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);

    Quantity(String words, String base, Map<String, Double> others) {
      this.words = words;
      this.base = base;
      toBase.put(base, 1.0);
      toBase.putAll(others);
    }

    /** Whether a number of this quantity may be typed with that unit. */
    public boolean understands(String unit) {
      return toBase.containsKey(unit);
    }

    /** A number of some unit in the base unit. */
    private double inBase(double number, String unit) {
      double above =
          this == TEMPERATURE && unit.toUpperCase(Locale.ROOT).endsWith("F") ? FREEZING : 0;
      return (number - above) * toBase.get(unit);
    }

    /** Unit of a number typed without one, and of {@link Measure#value()}. */
    public String base() {
      return base;
    }
  }

  /**
   * Reads a number with an optional unit. A decimal comma is a decimal point.
   *
   * @throws Refusal naming what was typed and the units that are understood, or both readings where
   *     a comma could stand between thousands
   */
  public static Measure parse(String typed, Quantity quantity) {
    String text = typed.strip();
    refuseThousands(text, quantity.words);
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw Refusal.usage(
          "%s must be a number with an optional unit, such as 30%s, not \"%s\"."
              .formatted(quantity.words, quantity.base, typed));
    }
    String unit = matcher.group(2).replace("²", "2");
    if (!unit.isEmpty() && !quantity.understands(unit)) {
      throw Refusal.usage(
          "%s must be in %s, not \"%s\"."
              .formatted(quantity.words, String.join(", ", quantity.toBase.keySet()), typed));
    }
    double value = quantity.inBase(number(matcher), unit.isEmpty() ? quantity.base : unit);
    return new Measure(finite(value, text, quantity.words), text);
  }

  /** The unit typed after a number, blank if none; empty if no number was typed. */
  public static Optional<String> unit(String typed) {
    Matcher matcher = FORM.matcher(typed.strip());
    return matcher.matches() ? Optional.of(matcher.group(2)) : Optional.empty();
  }

  /**
   * Reads a number that has no unit. A decimal comma is a decimal point.
   *
   * @throws Refusal naming what was typed, or both readings where a comma could stand between
   *     thousands
   */
  public static double plainNumber(String typed) {
    String text = typed.strip();
    refuseThousands(text, NUMBER);
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches() || !matcher.group(2).isEmpty()) {
      throw Refusal.usage(
          "%s is needed here, such as 30 or 1.5, not \"%s\".".formatted(NUMBER, typed));
    }
    return finite(number(matcher), text, NUMBER);
  }

  private static double number(Matcher form) {
    return Double.parseDouble(form.group(1).replace(',', '.'));
  }

  private static double finite(double value, String text, String words) {
    if (Double.isInfinite(value)) {
      throw Refusal.usage("%s of %s is too large; correct it.".formatted(words, text));
    }
    return value;
  }

  /** 1,200 is twelve hundred to some and one and a fifth to others; 1,5 and 0,125 are not. */
  private static void refuseThousands(String text, String words) {
    Matcher matcher = THOUSANDS.matcher(text);
    if (!matcher.matches()) {
      return;
    }
    String rest = matcher.group(2);
    String joined = matcher.group(1).replace(",", "") + rest;
    boolean oneComma = matcher.group(1).indexOf(',') == matcher.group(1).lastIndexOf(',');
    throw Refusal.usage(
        oneComma && !rest.startsWith(".")
            ? "%s of %s can be read in two ways; write it without a comma, as %s or %s."
                .formatted(words, text, joined, decimal(matcher.group(1)) + rest)
            : "%s must be written without commas, as %s, not \"%s\"."
                .formatted(words, joined, text));
  }

  private static String decimal(String oneComma) {
    return oneComma.replace(',', '.').replaceFirst("\\.?0+$", "");
  }
}
