package charline.answer;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.HalfNormalSpread;
import charline.model.LearnedSpread;
import charline.model.LogNormalSpread;
import charline.model.Prior;
import charline.model.SpreadPrior;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One parameter of a prior as a line of text: {@code char dose = 30 x/ 4.48}, {@code clearing dose
 * = 10 x/ 4.48 at 70um}, {@code char phi = 0 +/- 0.5 above -1}, {@code char omega = 0 +/- 0.2},
 * {@code char omega = 0.14 x/ 1.9}, {@code char omega = 0 +/- 0.25 x/ 1.5}.
 */
public enum PriorLine {
  /** Even-chance dose of one pass in J/cm²; where {@code at} is named, of such a coat. */
  DOSE("dose", "x/", Prior::tau),
  /** Weight of ln intensity; cut off below 0 unless {@code above} says where. */
  PHI("phi", "+/-", p -> p.phi().normal()),
  /** Weight of ln passes, cut off below 0. */
  PSI("psi", "+/-", p -> p.psi().normal()),
  /** Spread from patch to patch in ln dose. */
  SIGMA("sigma", "x/", Prior::lnSigma),
  /**
   * Spread from board to board in ln dose: half-normal, or log-normal, or log-normal by a factor
   * about a level that is half-normal.
   */
  OMEGA("omega", "0 +/-", p -> normal(p.omega()));

  private static final double DOSE_J_CM2 = 1e5;
  private static final double WIDTH = 100;
  private static final double WEIGHT = 20;
  private static final double BOARDS = 3;
  private static final double FACTOR_MOST = 1000;
  private static final double COAT_UM = 1e5;
  private static final Pattern FACTOR =
      Pattern.compile(
          "(\\S+)\\s*(?:x/|\u00d7/|\u00d7\u00f7)\\s*(\\S+)(?:\\s+at\\s+(\\S+?)\\s*[u\u00b5]m)?");
  private static final Pattern SPREAD =
      Pattern.compile("(\\S+)\\s*(?:\\+/-|\u00b1)\\s*(\\S+)(?:\\s+above\\s+(\\S+))?");
  private static final Pattern HALF =
      Pattern.compile("0\\s*(?:\\+/-|±)\\s*(\\S+)(?:\\s+(?:x/|×/|×÷)\\s*(\\S+))?");

  private final String word;
  private final String form;
  private final Function<Prior, Prior.Normal> of;

  /**
   * What a line says.
   *
   * @param normal middle and spread; of logarithms where the line gives a factor
   * @param least where a weight is cut off below
   * @param atMicrometres thickness of the coat that a dose is for
   * @param boards prior of the spread between boards, where the line is about that
   */
  public record Value(
      Prior.Normal normal,
      OptionalDouble least,
      OptionalDouble atMicrometres,
      Optional<SpreadPrior> boards) {
    Value(Prior.Normal normal, OptionalDouble least, OptionalDouble atMicrometres) {
      this(normal, least, atMicrometres, Optional.empty());
    }

    Value(SpreadPrior boards) {
      this(
          PriorLine.normal(boards),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.of(boards));
    }
  }

  /** Middle and spread of a prior of the spread between boards; of logarithms if log-normal. */
  private static Prior.Normal normal(SpreadPrior boards) {
    if (boards instanceof HalfNormalSpread half) {
      return new Prior.Normal(0, half.scale());
    }
    if (boards instanceof LearnedSpread learned && learned.strata() == 0) {
      return new Prior.Normal(0, learned.levelScale());
    }
    LogNormalSpread factor = logNormal(boards);
    return new Prior.Normal(Math.log(factor.median()), factor.lnFactor());
  }

  /** What was learned from a log is written down as the log-normal nearest to it. */
  private static LogNormalSpread logNormal(SpreadPrior boards) {
    return boards instanceof LearnedSpread learned
        ? learned.asLogNormal()
        : (LogNormalSpread) boards;
  }

  PriorLine(String word, String form, Function<Prior, Prior.Normal> of) {
    this.word = word;
    this.form = form;
    this.of = of;
  }

  public String word() {
    return word;
  }

  /** Whether the spread that a prior has for this is a factor, and the middle a median. */
  public boolean factor(Prior prior) {
    return form.equals("x/") || (this == OMEGA && of(prior).normal().mean() != 0);
  }

  /** What a prior has for this parameter. */
  public Value of(Prior prior) {
    if (this == OMEGA) {
      return new Value(prior.omega());
    }
    return new Value(
        of.apply(prior),
        switch (this) {
          case PHI -> OptionalDouble.of(prior.phi().least());
          case PSI -> OptionalDouble.of(prior.psi().least());
          default -> OptionalDouble.empty();
        },
        this == DOSE ? prior.atMicrometres() : OptionalDouble.empty());
  }

  /** The line of one event, for either light. */
  public String write(Event event, Prior prior) {
    return event.word() + " " + word + " = " + value(prior);
  }

  /** The line of one event under one kind of light. */
  public String write(Emission emission, Event event, Prior prior) {
    return emission.word() + " " + write(event, prior);
  }

  /** The right-hand side of the line. */
  public String value(Prior prior) {
    Value v = of(prior);
    Prior.Normal n = v.normal();
    String value =
        factor(prior)
            ? figure(Math.exp(n.mean())) + " x/ " + figure(Math.exp(n.sd()))
            : figure(n.mean()) + " +/- " + figure(n.sd());
    if (prior.omega() instanceof LearnedSpread learned && this == OMEGA && !factor(prior)) {
      return value + " x/ " + figure(Math.exp(learned.lnFactor()));
    }
    if (v.atMicrometres().isPresent()) {
      return value + " at " + figure(v.atMicrometres().getAsDouble()) + "um";
    }
    return this == PHI && v.least().getAsDouble() != 0
        ? value + " above " + figure(v.least().getAsDouble())
        : value;
  }

  /** Five digits: more than any opinion has. */
  private static String figure(double value) {
    return Figures.plain(new BigDecimal(value).round(new MathContext(5)).doubleValue());
  }

  /**
   * What a right-hand side says.
   *
   * @throws Refusal saying what it must look like
   */
  Value read(Event event, String value) {
    String typed = value.strip().toLowerCase(Locale.ROOT);
    if (this == OMEGA) {
      return new Value(boards(typed, value));
    }
    Matcher m = (form.equals("x/") ? FACTOR : SPREAD).matcher(typed);
    boolean more = m.matches() && m.group(3) != null;
    if (!m.matches() || (more && this != PHI && !(this == DOSE && event == Event.CLEARING))) {
      throw mustLookLike(value);
    }
    double middle = number(m.group(1));
    double spread = number(m.group(2));
    OptionalDouble third = more ? OptionalDouble.of(number(m.group(3))) : OptionalDouble.empty();
    return switch (this) {
      case DOSE -> new Value(factor(middle, spread), OptionalDouble.empty(), coat(third));
      case PHI -> new Value(weight(middle, spread), least(third), OptionalDouble.empty());
      case PSI -> new Value(weight(middle, spread), OptionalDouble.of(0), third);
      default -> new Value(factor(middle, spread), OptionalDouble.empty(), third);
    };
  }

  private SpreadPrior boards(String typed, String value) {
    Matcher half = HALF.matcher(typed);
    if (half.matches()) {
      double scale = spread(number(half.group(1)));
      return half.group(2) == null
          ? new HalfNormalSpread(scale)
          : LearnedSpread.beforeAnyTrial(scale, lnFactor(number(half.group(2))));
    }
    Matcher factor = FACTOR.matcher(typed);
    if (!factor.matches() || factor.group(3) != null) {
      throw mustLookLike(value);
    }
    return new LogNormalSpread(spread(number(factor.group(1))), lnFactor(number(factor.group(2))));
  }

  private Refusal mustLookLike(String value) {
    return Refusal.usage(
        "%s must look like \"%s\", not \"%s\".".formatted(word, example(), value.strip()));
  }

  private Prior.Normal weight(double middle, double spread) {
    return new Prior.Normal(within(word, middle, -WEIGHT, WEIGHT), spread(spread));
  }

  /** Files from before this could be said cut every weight off below 0. */
  private static OptionalDouble least(OptionalDouble given) {
    return OptionalDouble.of(
        given.isPresent()
            ? within("least phi", given.getAsDouble(), Prior.Weight.OF_POWER, WEIGHT)
            : 0);
  }

  private static OptionalDouble coat(OptionalDouble given) {
    return given.isPresent()
        ? OptionalDouble.of(within("thickness of dose", given.getAsDouble(), 1, COAT_UM))
        : given;
  }

  private Prior.Normal factor(double middle, double factor) {
    double most = this == SIGMA ? WIDTH : DOSE_J_CM2;
    return new Prior.Normal(
        Math.log(within(word, above(word, middle, 0), 1 / most, most)), lnFactor(factor));
  }

  private double lnFactor(double factor) {
    String what = "factor of " + word;
    return Math.log(within(what, above(what, factor, 1), 1.01, FACTOR_MOST));
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
  Prior put(Prior p, Value v) {
    Prior.Normal n = v.normal();
    return switch (this) {
      case DOSE -> new Prior(n, p.phi(), p.psi(), p.lnSigma(), p.omega(), v.atMicrometres());
      case PHI -> new Prior(p.tau(), weight(v), p.psi(), p.lnSigma(), p.omega(), p.atMicrometres());
      case PSI -> new Prior(p.tau(), p.phi(), weight(v), p.lnSigma(), p.omega(), p.atMicrometres());
      case SIGMA -> new Prior(p.tau(), p.phi(), p.psi(), n, p.omega(), p.atMicrometres());
      case OMEGA ->
          new Prior(
              p.tau(), p.phi(), p.psi(), p.lnSigma(), v.boards().orElseThrow(), p.atMicrometres());
    };
  }

  private static Prior.Weight weight(Value v) {
    return new Prior.Weight(v.normal(), v.least().orElse(0));
  }
}
