package charline.window;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PriorSet;
import charline.model.Trials;
import charline.model.check.FitChecker;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the window of a stratum, or says why there is none.
 *
 * @param fitter fits the two models
 * @param wary of boards that differ more than few of them can show: hold promises to the sturdier
 *     prior too, and give no window on few boards that are seen to differ much
 */
public record WindowFinder(Fitter fitter, boolean wary) {
  /** Below this chance that any window exists the answer is "none". */
  static final double HOPELESS = 0.2;

  /** Wary of boards, as every answer to a person is. */
  public WindowFinder(Fitter fitter) {
    this(fitter, true);
  }

  public static WindowFinder withDefaults() {
    return new WindowFinder(Fitter.withDefaults());
  }

  /** With other priors. */
  public WindowFinder with(PriorSet priors) {
    return new WindowFinder(fitter.with(priors), wary);
  }

  /** With priors of the same centres that say half as much: every spread doubled. */
  public WindowFinder halfAsSure() {
    return with(fitter.priors().widened(2));
  }

  /** Without the caution about boards, to see what it costs. */
  public WindowFinder unwary() {
    return new WindowFinder(fitter, false);
  }

  /**
   * The answer for one stratum.
   *
   * @param trials its patches, tint counted as {@code asked} says
   * @param bench rig and fixed knobs
   * @param asked what the window has to keep
   */
  public Recommendation recommend(Trials trials, RigSetup bench, Requirements asked) {
    Trials counted = trials.acceptingTint(asked.acceptTint());
    return recommend(
        counted,
        bench,
        asked,
        fitter.fit(counted, Event.CHAR),
        fitter.fit(counted, Event.CLEARING));
  }

  /**
   * The answer from models fitted before.
   *
   * @param counted the patches they were fitted to, tint counted as {@code asked} says
   */
  public Recommendation recommend(
      Trials counted, RigSetup bench, Requirements asked, ModelFit charFit, ModelFit clearing) {
    if (counted.acceptTint() != asked.acceptTint()) {
      throw new IllegalArgumentException(
          "The models must count a tint as the question does; fit them anew.");
    }
    RiskBounds promises = new RiskBounds(asked, charFit, clearing, bench.strokes(), wary);
    TriedRegion reach = new TriedRegion(counted.patches());
    SupportingPatches witnesses = new SupportingPatches(counted);

    List<PassPlan> plans =
        PassNumbers.between(reach.passesTried()).stream()
            .map(passes -> PassPlan.of(bench, reach, witnesses, promises, passes))
            .toList();
    List<Box> boxes = plans.stream().flatMap(p -> p.box().stream()).toList();
    Optional<Box> fastest =
        boxes.stream()
            .max(
                Comparator.comparing((Box b) -> !b.narrowFor(bench.speed()))
                    .thenComparing(b -> b.start().netAreaRateSquareCentimetresPerMinute()));
    double chance = promises.chanceAnyWindow(reach);
    Optional<PassPlan> hope =
        plans.stream()
            .filter(p -> p.room() > Double.NEGATIVE_INFINITY)
            .max(Comparator.comparingDouble(PassPlan::room));
    FitChecker checker = new FitChecker(fitter);
    Findings findings =
        new Findings(
            counted.evidence(),
            asked,
            bench,
            reach,
            witnesses,
            checker.check(counted, charFit),
            checker.check(counted, clearing),
            wary ? Math.max(charFit.omega().median(), clearing.omega().median()) : 0,
            fastest,
            hope.map(p -> p.forecastOfHope(bench, promises)),
            chance);
    Verdict verdict = findings.verdict();
    Optional<Box> chosen = verdict == Verdict.WINDOW ? fastest : Optional.empty();
    int mapped =
        chosen.map(Box::passes).or(() -> hope.map(PassPlan::passes)).orElse(reach.mostPasses());
    return new Recommendation(
        counted.stratum(),
        asked,
        counted.evidence(),
        bench,
        verdict,
        findings.reasons(),
        findings.nextSteps(),
        chance,
        chosen,
        chosen.map(c -> boxes.stream().filter(b -> b != c).toList()).orElse(List.of()),
        MapMaker.map(bench, reach, witnesses, promises, mapped),
        counted.medianPatchSquareCentimetres(),
        Optional.of(charFit),
        Optional.of(clearing),
        counted.patches());
  }

  /**
   * One number of passes: its box, if any, and its best hope.
   *
   * @param room widest room between the two promises in ln dose, negative where they collide,
   *     negative infinity if nothing is within reach
   * @param hope the power and ln speed with that room; null if nothing is within reach
   */
  private record PassPlan(int passes, Optional<Box> box, double room, BoxSearch.Point hope) {
    /** Less than any step between two speeds of three digits. */
    private static final double TINY = 1e-6;

    static PassPlan of(
        RigSetup bench,
        TriedRegion reach,
        SupportingPatches witnesses,
        RiskBounds promises,
        int passes) {
      BoxSearch search =
          new BoxSearch(
              bench,
              reach,
              witnesses,
              promises.hottest(reach, passes),
              promises.coldest(reach, passes),
              passes);
      double[] powers = search.powers();
      int best = -1;
      for (int i = 0; i < powers.length; i++) {
        if (search.middle(i).isPresent() && (best < 0 || search.room(i) > search.room(best))) {
          best = i;
        }
      }
      Optional<Box> box =
          search.largest().flatMap(found -> box(bench, promises, search, found, passes));
      if (best < 0) {
        return new PassPlan(passes, box, Double.NEGATIVE_INFINITY, null);
      }
      double dose = Math.exp(search.middle(best).orElseThrow());
      double lnSpeed = Math.log(bench.speedForDose(powers[best], dose));
      return new PassPlan(
          passes, box, search.room(best), new BoxSearch.Point(powers[best], lnSpeed));
    }

    Forecast forecastOfHope(RigSetup bench, RiskBounds promises) {
      double speed = round(Math.exp(hope.lnSpeed()), RoundingMode.HALF_EVEN);
      return promises.forecast(bench, hope.power(), speed, passes);
    }

    private static Optional<Box> box(
        RigSetup bench, RiskBounds promises, BoxSearch search, BoxSearch.Found found, int passes) {
      double low = round(Math.exp(found.lnLowSpeed()), RoundingMode.CEILING);
      double high = round(Math.exp(found.lnHighSpeed()), RoundingMode.FLOOR);
      // Between its knots a frontier may err by a digit of speed; the corners themselves decide.
      Forecast hot = promises.forecast(bench, found.highPower(), low, passes);
      while (low <= high && hot.charRiskUpper() > promises.asked().charRisk()) {
        low = next(low, RoundingMode.CEILING);
        hot = promises.forecast(bench, found.highPower(), low, passes);
      }
      Forecast cold = promises.forecast(bench, found.lowPower(), high, passes);
      while (low <= high && cold.clearChanceLower() < promises.asked().clearChance()) {
        high = next(high, RoundingMode.FLOOR);
        cold = promises.forecast(bench, found.lowPower(), high, passes);
      }
      if (low > high) {
        return Optional.empty(); // narrower than a speed can be read
      }
      BoxSearch.Point start = search.start(found);
      double speed =
          Math.max(low, Math.min(high, round(Math.exp(start.lnSpeed()), RoundingMode.HALF_EVEN)));
      return Optional.of(
          new Box(
              passes,
              new Range(found.lowPower(), found.highPower()),
              new Range(low, high),
              promises.forecast(bench, start.power(), speed, passes),
              hot,
              cold));
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
}
