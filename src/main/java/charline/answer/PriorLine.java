package charline.answer;

import charline.model.Event;
import charline.model.Prior;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One parameter of a prior as a line of text: {@code char dose = 30 x/ 4.48}, {@code char phi = 0.4
 * +/- 0.4}, {@code char omega = 0 +/- 0.2}.
 */
public enum PriorLine {
  DOSE(
      "dose",
      "x/",
      p -> p.tau(),
      "J/cm2 of one pass with an even chance, times or divided by a factor",
      "wood browns at tens of J/cm2, paint comes off at about a third of that; with a factor of 4.5"
          + " either way, the patches decide (common practice, no published source)"),
  PHI(
      "phi",
      "+/-",
      p -> p.phi(),
      "weight of ln fluence beside ln dose, not below 0",
      "char comes from heat, so it depends on dose more than on fluence; lifting a film needs"
          + " fluence above a threshold (common practice, no published source)"),
  PSI(
      "psi",
      "+/-",
      p -> p.psi(),
      "weight of ln passes beside ln dose, not below 0",
      "1 would mean that two passes do as much as one of twice the dose; the wood cools between"
          + " passes, so it is less (common practice, no published source)"),
  SIGMA(
      "sigma",
      "x/",
      p -> p.lnSigma(),
      "spread from patch to patch in ln dose, times or divided by a factor",
      "at 0.25 it takes 4.4 times the dose to go from 5 to 95 % of patches; grain and hand rarely"
          + " allow less (common practice, no published source)"),
  OMEGA(
      "omega",
      "0 +/-",
      p -> new Prior.Normal(0, p.omegaScale()),
      "spread from board to board in ln dose; the upper half of this normal",
      "boards of one wood mostly lie within a fifth of each other (common practice, no published"
          + " source); promises must also hold at one and a half times this");

  private static final double DOSE_J_CM2 = 1e5;
  private static final double WIDTH = 100;
  private static final double WEIGHT = 20;
  private static final double BOARDS = 3;
  private static final double FACTOR_MOST = 1000;
  private static final Pattern FACTOR =
      Pattern.compile("(\\S+)\\s*(?:x/|\u00d7/|\u00d7\u00f7)\\s*(\\S+)");
  private static final Pattern SPREAD = Pattern.compile("(\\S+)\\s*(?:\\+/-|\u00b1)\\s*(\\S+)");
  private static final Pattern HALF = Pattern.compile("(0)\\s*(?:\\+/-|±)\\s*(\\S+)");

  private final String word;
  private final String form;
  private final Function<Prior, Prior.Normal> of;
  private final String meaning;
  private final String reason;

  PriorLine(
      String word, String form, Function<Prior, Prior.Normal> of, String meaning, String reason) {
    this.word = word;
    this.form = form;
    this.of = of;
    this.meaning = meaning;
    this.reason = reason;
  }

  public String word() {
    return word;
  }

  public String meaning() {
    return meaning;
  }

  public String reason() {
    return reason;
  }

  /** The line without its number. */
  public String write(Event event, Prior prior) {
    Prior.Normal n = of.apply(prior);
    String value =
        switch (form) {
          case "x/" -> figure(Math.exp(n.mean())) + " x/ " + figure(Math.exp(n.sd()));
          case "+/-" -> figure(n.mean()) + " +/- " + figure(n.sd());
          default -> "0 +/- " + figure(n.sd());
        };
    return eventWord(event) + " " + word + " = " + value;
  }

  static String eventWord(Event event) {
    return event == Event.CHAR ? "char" : "clearing";
  }

  /** Five digits: more than any opinion has. */
  private static String figure(double value) {
    return Figures.plain(new BigDecimal(value).round(new MathContext(5)).doubleValue());
  }

  /**
   * The mean and spread that a value says.
   *
   * @throws Refusal saying what it must look like
   */
  Prior.Normal read(String value) {
    Pattern pattern =
        switch (form) {
          case "x/" -> FACTOR;
          case "+/-" -> SPREAD;
          default -> HALF;
        };
    Matcher m = pattern.matcher(value.strip().toLowerCase(Locale.ROOT));
    if (!m.matches()) {
      throw Refusal.usage(
          "%s must look like \"%s\", not \"%s\".".formatted(word, example(), value.strip()));
    }
    double spread = number(m.group(2));
    return switch (form) {
      case "x/" -> factor(number(m.group(1)), spread);
      case "+/-" ->
          new Prior.Normal(within(word, number(m.group(1)), -WEIGHT, WEIGHT), spread(spread));
      default -> new Prior.Normal(0, spread(spread));
    };
  }

  private Prior.Normal factor(double middle, double factor) {
    double most = this == SIGMA ? WIDTH : DOSE_J_CM2;
    return new Prior.Normal(
        Math.log(within(word, above(word, middle, 0), 1 / most, most)),
        Math.log(
            within("factor of " + word, above("factor of " + word, factor, 1), 1.01, FACTOR_MOST)));
  }

  private double spread(double spread) {
    String what = "spread of " + word;
    return within(what, above(what, spread, 0), 0.001, this == OMEGA ? BOARDS : WEIGHT);
  }

  /** Beyond these no wood and no finish lies, and the fit's matrices cannot be inverted. */
  private static double within(String what, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw Refusal.usage(
          "the %s must be between %s and %s, not %s."
              .formatted(what, Figures.plain(low), Figures.plain(high), Figures.plain(value)));
    }
    return value;
  }

  private static double above(String what, double value, double limit) {
    if (!(value > limit)) {
      throw Refusal.usage(
          "the %s must be above %s, not %s."
              .formatted(what, Figures.plain(limit), Figures.plain(value)));
    }
    return value;
  }

  private double number(String text) {
    if (!text.matches("-?\\d{1,9}(\\.\\d{1,9})?")) {
      throw Refusal.usage(
          "%s takes plain numbers, not \"%s\"; write it like \"%s\"."
              .formatted(word, text, example()));
    }
    return Double.parseDouble(text);
  }

  private String example() {
    return switch (form) {
      case "x/" -> word + " = 30 x/ 4.5";
      case "+/-" -> word + " = 0.4 +/- 0.4";
      default -> word + " = 0 +/- 0.2";
    };
  }

  /** A prior with this parameter replaced. */
  Prior put(Prior p, Prior.Normal n) {
    return switch (this) {
      case DOSE -> new Prior(n, p.phi(), p.psi(), p.lnSigma(), p.omegaScale());
      case PHI -> new Prior(p.tau(), n, p.psi(), p.lnSigma(), p.omegaScale());
      case PSI -> new Prior(p.tau(), p.phi(), n, p.lnSigma(), p.omegaScale());
      case SIGMA -> new Prior(p.tau(), p.phi(), p.psi(), n, p.omegaScale());
      case OMEGA -> new Prior(p.tau(), p.phi(), p.psi(), p.lnSigma(), n.sd());
    };
  }
}
