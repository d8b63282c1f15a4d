package charline.ask;

import charline.log.search.Amount;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What people call amounts, their units, and more or less of them. */
final class AmountWords {
  /** What is more or less of an amount: faster is more speed. */
  record Comparative(Amount amount, boolean more) {}

  /** Values that follow from others, so that nobody types all their digits. */
  static final Set<Amount> COMPUTED =
      EnumSet.of(Amount.DOSE, Amount.TOTAL_DOSE, Amount.FLUENCE, Amount.IRRADIANCE, Amount.POWER_W);

  static final Set<String> MORE = Set.of("more", "higher", "greater", "bigger", "larger", "longer");
  static final Set<String> LESS = Set.of("less", "lower", "smaller", "fewer", "shorter");
  static final Set<String> IN_ALL = Set.of("in all", "in total", "all together", "all passes");

  static final Map<String, Amount> FIELDS =
      table(
          new EnumMap<>(
              Map.ofEntries(
                  Map.entry(
                      Amount.POWER_PCT,
                      "power, laser power, power setting, power settings, output, output power,"
                          + " percent power, % power, powers"),
                  Map.entry(
                      Amount.SPEED, "speed, pace, travel speed, feed, speeds, velocity, feed rate"),
                  Map.entry(Amount.HAND, "hand speed, hand, hand pace, hand travel"),
                  Map.entry(Amount.SCAN, "scan speed, scanning speed, scanner speed, spot speed"),
                  Map.entry(
                      Amount.SPACING, "spacing, line spacing, hatch, hatch spacing, line distance"),
                  Map.entry(
                      Amount.WIDTH,
                      "width, scan width, stripe width, stroke width, scan line width, swath"),
                  Map.entry(
                      Amount.SPOT, "spot, spot size, spot diameter, beam diameter, focus diameter"),
                  Map.entry(
                      Amount.RATE,
                      "rep, rep rate, repetition, repetition rate, frequency, pulse frequency,"
                          + " rate"),
                  Map.entry(
                      Amount.PULSE, "pulse, pulse length, pulse duration, pulse width, pulses"),
                  Map.entry(Amount.SECONDS, "time per pass, seconds per pass"),
                  Map.entry(
                      Amount.DOSE,
                      "dose, energy dose, energy, energy density, doses, dose per pass, dosage,"
                          + " energy per area"),
                  Map.entry(
                      Amount.TOTAL_DOSE,
                      "total dose, dose in all, dose in total, accumulated dose, cumulative dose,"
                          + " whole dose, summed dose, total energy"),
                  Map.entry(Amount.FLUENCE, "fluence, pulse fluence, fluences, mean fluence"),
                  Map.entry(Amount.IRRADIANCE, "irradiance, power density, intensity"),
                  Map.entry(
                      Amount.PASSES,
                      "passes, pass, number of passes, pass count, count of passes, strokes,"
                          + " crossings"),
                  Map.entry(
                      Amount.DEPTH,
                      "depth, depth removed, removal depth, removed depth, removed, ablation depth,"
                          + " deep, removal, depths"),
                  Map.entry(
                      Amount.THICKNESS,
                      "thickness, coat thickness, film, film thickness, thick, coating thickness,"
                          + " paint thickness, finish thickness, layer thickness, thick coat"),
                  Map.entry(Amount.PATCH_AREA, "patch size, patch area, area, size, area of patch"),
                  Map.entry(
                      Amount.MOISTURE,
                      "moisture, moisture content, wood moisture, mc, humidity, moist"),
                  Map.entry(
                      Amount.REST,
                      "rest, pause, wait, rest time, rest between passes, pause between passes,"
                          + " waiting time, cooling time, rests"),
                  Map.entry(
                      Amount.STAND_OFF,
                      "stand off, standoff, distance, working distance, stand off distance, head"
                          + " distance"),
                  Map.entry(
                      Amount.DEFOCUS, "defocus, focus offset, out of focus, defocused, defocussed"),
                  Map.entry(
                      Amount.LINES,
                      "lines, lines per second, turns, turns per second, line rate, line"
                          + " frequency"),
                  Map.entry(
                      Amount.TEMPERATURE, "temperature, temp, wood temperature, temperatures"),
                  Map.entry(Amount.WAVELENGTH, "wavelength, wave length"),
                  Map.entry(Amount.RATED, "rated, rated power, rating, nominal power"))));

  /** What an adjective is more of: "most slow" is least speed. */
  static final Map<String, Comparative> PLAIN =
      Map.ofEntries(
          Map.entry("slow", new Comparative(Amount.SPEED, false)),
          Map.entry("fast", new Comparative(Amount.SPEED, true)),
          Map.entry("quick", new Comparative(Amount.SPEED, true)),
          Map.entry("hot", new Comparative(Amount.DOSE, true)),
          Map.entry("strong", new Comparative(Amount.DOSE, true)),
          Map.entry("harsh", new Comparative(Amount.DOSE, true)),
          Map.entry("gentle", new Comparative(Amount.DOSE, false)),
          Map.entry("mild", new Comparative(Amount.DOSE, false)),
          Map.entry("weak", new Comparative(Amount.DOSE, false)),
          Map.entry("cool", new Comparative(Amount.DOSE, false)),
          Map.entry("deep", new Comparative(Amount.DEPTH, true)),
          Map.entry("shallow", new Comparative(Amount.DEPTH, false)));

  static final Map<String, Comparative> COMPARATIVES = comparatives();

  /** Spoken and slovenly units, as {@link charline.quantity.Measure} knows them. */
  static final Map<String, String> UNITS =
      flipped(
          Map.ofEntries(
              Map.entry("%", "percent, per cent, pct, prozent, % of power"),
              Map.entry("W", "watt, watts, w"),
              Map.entry("kW", "kilowatt, kilowatts, kw"),
              Map.entry(
                  "mm/s",
                  "mm per second, mm per sec, mm/sec, mm a second, millimetres per second,"
                      + " millimeters per second, millimetre per second, mm per s, mmps, mms, mm /"
                      + " s"),
              Map.entry("cm/s", "cm per second, cm/sec, cm a second, centimetres per second"),
              Map.entry(
                  "in/s",
                  "inches per second, inch per second, in per second, ips, in/sec, inch/s,"
                      + " inches/s"),
              Map.entry("m/min", "metres per minute, meters per minute, m per minute, m per min"),
              Map.entry(
                  "J/cm2",
                  "j per cm2, joule per cm2, joules per cm2, joules, joule, j, j/cm, j/sqcm, joules"
                      + " per square centimetre, j per square cm, joules per square cm, j/cm2 per"
                      + " pass, joule/cm2, joules/cm2, jcm2"),
              Map.entry("W/cm2", "w per cm2, watts per cm2"),
              Map.entry("kHz", "kilohertz, khz"),
              Map.entry("Hz", "hertz, hz"),
              Map.entry("ns", "nanosecond, nanoseconds"),
              Map.entry(
                  "um", "micron, microns, micrometre, micrometres, micrometer, micrometers, mu"),
              Map.entry("mil", "thou, mils"),
              Map.entry("mm", "millimetre, millimetres, millimeter, millimeters"),
              Map.entry("cm", "centimetre, centimetres, centimeter, centimeters"),
              Map.entry("in", "inch, inches"),
              Map.entry(
                  "cm2", "sq cm, square cm, sqcm, square centimetre, square centimetres, cm^2"),
              Map.entry("s", "sec, secs, second, seconds"),
              Map.entry("min", "minute, minutes, mins"),
              Map.entry("C", "°c, degrees, deg, degree, degrees c, celsius, degc, °"),
              Map.entry("F", "°f, fahrenheit, degrees f"),
              Map.entry("nm", "nanometre, nanometres, nanometer, nanometers"),
              Map.entry("/s", "per second, lines per second, turns per second, lines/s, turns/s"),
              Map.entry("passes", "pass, times, x")));

  private AmountWords() {}

  /** What a number with that unit may be about, were nothing else said. */
  static List<Amount> of(String typed) {
    return switch (UNITS.getOrDefault(typed.toLowerCase(Locale.ROOT), typed)) {
      case "%" -> List.of(Amount.POWER_PCT);
      case "W", "kW", "w", "kw" -> List.of(Amount.POWER_W);
      case "mm/s", "cm/s", "m/s", "in/s", "m/min" -> List.of(Amount.SPEED);
      case "J/cm2", "j/cm2" -> List.of(Amount.DOSE);
      case "W/cm2", "w/cm2" -> List.of(Amount.IRRADIANCE);
      case "kHz", "khz", "mhz" -> List.of(Amount.RATE);
      case "Hz" -> List.of(Amount.LINES);
      case "ns", "us" -> List.of(Amount.PULSE);
      case "um", "mil" -> List.of(Amount.DEPTH, Amount.THICKNESS);
      case "mm", "cm", "in" ->
          List.of(Amount.SPOT, Amount.WIDTH, Amount.SPACING, Amount.STAND_OFF, Amount.DEFOCUS);
      case "cm2", "in2" -> List.of(Amount.PATCH_AREA);
      case "s", "min" -> List.of(Amount.REST, Amount.SECONDS);
      case "C", "F", "c", "f" -> List.of(Amount.TEMPERATURE);
      case "nm" -> List.of(Amount.WAVELENGTH);
      case "/s" -> List.of(Amount.LINES);
      case "passes" -> List.of(Amount.PASSES);
      default -> List.of();
    };
  }

  /** Whether an amount may have that unit, or none. */
  static boolean fits(Amount amount, String typed) {
    String unit = UNITS.getOrDefault(typed, typed);
    return typed.isEmpty()
        || byUnit(amount, typed) != amount
        || of(typed).contains(amount)
        || amount.knob().quantity() != null && amount.knob().quantity().understands(unit)
        || amount.unit().equalsIgnoreCase(unit);
  }

  /** The amount that is meant by a name with that unit: power in W is another than power in %. */
  static Amount byUnit(Amount named, String typed) {
    List<Amount> possible = of(typed);
    boolean watts = possible.equals(List.of(Amount.POWER_W));
    if (named == Amount.POWER_PCT && watts) {
      return Amount.POWER_W;
    }
    if (named == Amount.DOSE && possible.equals(List.of(Amount.TEMPERATURE))) {
      return Amount.TEMPERATURE; // "colder than 14 degrees"
    }
    return named;
  }

  /** "a spot, a scan width or a line spacing". */
  static String either(List<Amount> amounts) {
    List<String> names = amounts.stream().map(Amount::words).toList();
    return String.join(", ", names.subList(0, names.size() - 1))
        + " or "
        + names.get(names.size() - 1);
  }

  private static Map<String, Comparative> comparatives() {
    Map<String, Comparative> all = new HashMap<>();
    add(all, Amount.SPEED, true, "faster, quicker, speedier");
    add(all, Amount.SPEED, false, "slower");
    add(all, Amount.DOSE, false, "cooler, colder, gentler, milder");
    add(all, Amount.DOSE, true, "harsher");
    add(all, Amount.DEPTH, true, "deeper");
    add(all, Amount.DEPTH, false, "shallower");
    add(all, Amount.THICKNESS, true, "thicker");
    add(all, Amount.THICKNESS, false, "thinner");
    add(all, Amount.WIDTH, true, "wider");
    add(all, Amount.WIDTH, false, "narrower");
    add(all, Amount.MOISTURE, true, "wetter, moister");
    add(all, Amount.MOISTURE, false, "drier, dryer");
    add(all, Amount.TEMPERATURE, true, "warmer");
    PLAIN.forEach((adjective, what) -> all.put("more " + adjective + " than", what));
    return all;
  }

  private static void add(
      Map<String, Comparative> all, Amount amount, boolean more, String adjectives) {
    for (String adjective : adjectives.split(", ")) {
      all.put(adjective + " than", new Comparative(amount, more));
      all.put(adjective + " then", new Comparative(amount, more));
    }
  }

  /** Every phrase of a table whose rows list them. */
  static <T> Map<String, T> table(Map<T, String> rows) {
    Map<String, T> phrases = new HashMap<>();
    rows.forEach(
        (meaning, text) -> {
          for (String phrase : text.split(", ")) {
            phrases.put(phrase, meaning);
          }
        });
    return Map.copyOf(phrases);
  }

  private static Map<String, String> flipped(Map<String, String> rows) {
    Map<String, String> units = new HashMap<>();
    rows.forEach(
        (unit, text) -> {
          for (String phrase : new ArrayList<>(List.of(text.split(", ")))) {
            units.put(phrase, unit);
          }
          units.put(unit.toLowerCase(Locale.ROOT), unit);
        });
    return Map.copyOf(units);
  }

  /** What a phrase of one to three words is the name of, from some word on. */
  static Optional<Map.Entry<Integer, Amount>> field(List<Word> words, int at) {
    for (int length = 3; length > 0; length--) {
      Amount amount = FIELDS.get(phrase(words, at, length));
      if (amount != null) {
        return Optional.of(Map.entry(length, amount));
      }
    }
    return Optional.empty();
  }

  static String phrase(List<Word> words, int at, int length) {
    if (at < 0 || at + length > words.size()) {
      return "";
    }
    StringBuilder text = new StringBuilder();
    for (int i = at; i < at + length; i++) {
      if (words.get(i).quoted() || i > at && words.get(i).comma()) {
        return "";
      }
      text.append(i > at ? " " : "").append(words.get(i).lower());
    }
    return text.toString();
  }
}
