package charline.window;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;

/** What can be found for one number of passes. */
final class PassSearch {
  /** Less than any step between two speeds of three digits. */
  private static final double TINY = 1e-6;

  /** What a speed loses in its logarithm, so that one that was tried is told as it was. */
  private static final double ROUNDING = 1e-10;

  private static final double NOTHING = Double.NEGATIVE_INFINITY;

  private final RigSetup bench;
  private final TriedRegion reach;
  private final TriedKnobs knobs;
  private final SupportingPatches witnesses;
  private final RiskBounds promises;
  private final int passes;
  private final Frontier hottest;
  private final Frontier coldest;

  /** Within reach. */
  private final BoxSearch search;

  PassSearch(
      RigSetup bench,
      TriedRegion reach,
      TriedKnobs knobs,
      SupportingPatches witnesses,
      RiskBounds promises,
      int passes) {
    this.bench = bench;
    this.reach = reach;
    this.knobs = knobs;
    this.witnesses = witnesses;
    this.promises = promises;
    this.passes = passes;
    hottest = promises.hottest(reach, passes);
    coldest = promises.coldest(reach, passes);
    search = search(0, knobs.speeds(bench.speed().kind()));
  }

  private BoxSearch search(double lnBack, Optional<Range> speeds) {
    return search(speeds, witnesses, hottest.shifted(-lnBack), coldest.shifted(lnBack));
  }

  private BoxSearch search(
      Optional<Range> speeds, SupportingPatches borneOutBy, Frontier hot, Frontier cold) {
    return new BoxSearch(bench, reach, speeds, borneOutBy, hot, cold, passes);
  }

  int passes() {
    return passes;
  }

  /** The largest box. */
  Optional<Box> box() {
    return box(search);
  }

  /**
   * The largest box that clears with half of the doubt that was asked for; empty where it leaves a
   * hand no room.
   */
  Optional<Box> surerBox() {
    Frontier cold = promises.coldestOfHalfTheDoubt(reach, passes);
    BoxSearch within = search(knobs.speeds(bench.speed().kind()), witnesses, hottest, cold);
    return box(within, promises.halfTheDoubt()).filter(box -> !box.narrowFor(bench.speed()));
  }

  /** True if there is still a box once both limits move towards each other by so much ln dose. */
  boolean survives(double lnMove) {
    return box(search(lnMove, knobs.speeds(bench.speed().kind()))).isPresent();
  }

  /** True if there is a box where speeds that were not tried are allowed. */
  boolean openAtOtherSpeeds() {
    return box(search(0, Optional.empty())).isPresent();
  }

  /** True if there is a box where no patch of the way itself has to come through. */
  boolean openWithFewerUnharmed() {
    Optional<Range> speeds = knobs.speeds(bench.speed().kind());
    return box(search(speeds, witnesses.askingForNone(), hottest, coldest)).isPresent();
  }

  /**
   * Widest room between the two promises in ln dose at a power within reach, negative where they
   * collide, negative infinity if nothing is within reach.
   */
  double room() {
    OptionalInt widest = best(i -> search.withinReach(i) ? search.room(i) : NOTHING);
    return widest.isPresent() ? search.room(widest.getAsInt()) : NOTHING;
  }

  /** The power of which some value is greatest; empty where all are {@link #NOTHING}. */
  private OptionalInt best(IntToDoubleFunction value) {
    int best = -1;
    double greatest = NOTHING;
    for (int i = 0; i < search.powers().length; i++) {
      double v = value.applyAsDouble(i);
      if (v > greatest) {
        greatest = v;
        best = i;
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  /**
   * How far above the clearing limit a setting can lie that is within reach and keeps the char
   * promise, in ln dose; negative where it cannot keep both, negative infinity if there is none.
   */
  double roomUnderChar() {
    OptionalInt best = best(search::roomUnderChar);
    return best.isPresent() ? search.roomUnderChar(best.getAsInt()) : NOTHING;
  }

  /** The setting with that room, {@link #roomUnderChar} being finite. */
  Forecast bestUnderChar() {
    int i = best(search::roomUnderChar).orElseThrow();
    double power = search.powers()[i];
    double speed = round(Math.exp(search.slowest(i) - ROUNDING), RoundingMode.CEILING);
    return promises.forecast(bench, power, speed, passes);
  }

  /** True if some setting within reach keeps the clearing promise. */
  boolean clearsSomewhere() {
    return best(i -> search.clears(i) ? 0 : NOTHING).isPresent();
  }

  private Optional<Box> box(BoxSearch in) {
    return box(in, promises.asked().confidence());
  }

  private Optional<Box> box(BoxSearch in, double clearingConfidence) {
    return in.largest().flatMap(found -> box(in, found, clearingConfidence));
  }

  private Optional<Box> box(BoxSearch in, BoxSearch.Found found, double clearingConfidence) {
    double low = round(Math.exp(found.lnLowSpeed() - ROUNDING), RoundingMode.CEILING);
    double high = round(Math.exp(found.lnHighSpeed() + ROUNDING), RoundingMode.FLOOR);
    // Between its knots a frontier may err by a digit of speed; the corners themselves decide.
    Forecast hot = promises.forecast(bench, found.highPower(), low, passes);
    while (low <= high && hot.charRiskUpper() > promises.asked().charRisk()) {
      low = next(low, RoundingMode.CEILING);
      hot = promises.forecast(bench, found.highPower(), low, passes);
    }
    while (low <= high
        && !promises.clears(bench, found.lowPower(), high, passes, clearingConfidence)) {
      high = next(high, RoundingMode.FLOOR);
    }
    if (low > high) {
      return Optional.empty(); // narrower than a speed can be read
    }
    BoxSearch.Point start = in.start(found);
    double speed =
        Math.max(low, Math.min(high, round(Math.exp(start.lnSpeed()), RoundingMode.HALF_EVEN)));
    return Optional.of(
        new Box(
            passes,
            new Range(found.lowPower(), found.highPower()),
            new Range(low, high),
            promises.forecast(bench, start.power(), speed, passes),
            hot,
            promises.forecast(bench, found.lowPower(), high, passes)));
  }

  /** The next speed that can be told, up or down. */
  private static double next(double speed, RoundingMode mode) {
    return round(speed * (mode == RoundingMode.CEILING ? 1 + TINY : 1 - TINY), mode);
  }

  /** Speeds are told to three digits. */
  private static double round(double speed, RoundingMode mode) {
    return new BigDecimal(speed).round(new MathContext(3, mode)).doubleValue();
  }
}
