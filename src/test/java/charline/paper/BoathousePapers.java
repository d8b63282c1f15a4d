package charline.paper;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.model.Event;
import charline.model.Evidence;
import charline.model.check.FitFinding;
import charline.plan.Advice;
import charline.plan.DialSetting;
import charline.plan.Gain;
import charline.plan.Motive;
import charline.plan.NextPatches;
import charline.plan.Place;
import charline.plan.Progress;
import charline.plan.Purpose;
import charline.plan.Site;
import charline.plan.Suggestion;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.trial.WoodForm;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.MapCell;
import charline.window.NextStep;
import charline.window.Range;
import charline.window.Reason;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import charline.window.Standing;
import charline.window.TriedKnobs;
import charline.window.Verdict;
import charline.window.WindowMap;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.stream.IntStream;

/**
 * A lakeside boathouse being restored, with made-up trials and a made-up logistic law in place of
 * the models: enough to print every kind of sheet.
 */
final class BoathousePapers {
  static final OffsetDateTime BURNED = OffsetDateTime.parse("2026-04-13T09:00:00+02:00");
  static final SheetStamp STAMP =
      new SheetStamp(
          "boathouse",
          "0.1.0",
          OffsetDateTime.parse("2026-05-04T07:45:00+02:00"),
          Optional.of("Ilse"));
  static final List<Caution> LATEX =
      List.of(
          new Caution(
              "Lead",
              "Latex is often laid over older lead paint. Have every coat down to the wood tested"
                  + " before the first patch. Where lead is found, only certified people go on.",
              "40 CFR 745 subpart E"),
          new Caution(
              "Vinyl and chlorinated film",
              "Some vinyl latex gives off hydrogen chloride under the beam. Sharp smell: stop, and"
                  + " use another method.",
              "common practice, no published source"),
          new Caution(
              "Pitch",
              "Pine knots and pitch pockets darken and flare before the clear wood does. Treat a"
                  + " knot as a patch of its own.",
              "common practice, no published source"),
          new Caution(
              "Board and veneer",
              "Plywood and MDF give off formaldehyde and more when heated. These trials are for"
                  + " solid wood only.",
              "29 CFR 1910.1048"));

  private static final double DOSE_AT_ONE_PERCENT_AND_ONE_MM_S = 3.0 * 100 / 60;

  private BoathousePapers() {}

  static Rig rig(String name, Emission emission) {
    return RigBuilder.heron(id(name))
        .named(name)
        .emission(emission)
        .ratedWatts(emission == Emission.PULSED ? 300 : 1500)
        .pulseNanoseconds(120)
        .lens(Optional.of("160 mm"))
        .checks(
            List.of(
                new PowerCheck(
                    id("check"), OffsetDateTime.parse("2026-04-02T08:00:00+02:00"), 50, 141)))
        .build();
  }

  static RigSetup bench(Emission emission) {
    return new RigSetup(
        rig("Heron", emission),
        BURNED,
        new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
        emission == Emission.PULSED
            ? Optional.of(new Pulses(40, OptionalDouble.of(120)))
            : Optional.empty(),
        new SpeedKnob(SpeedKnob.Kind.HAND, 60));
  }

  /**
   * A recommendation for latex on pine; the gap says how far char lies above clearing in ln dose.
   */
  static Recommendation latexOnPine(Verdict verdict) {
    double gap = verdict == Verdict.WINDOW ? 1.5 : verdict == Verdict.NONE ? 0.2 : 0.9;
    List<Patch> patches = patches(gap);
    Optional<Box> box = verdict == Verdict.WINDOW ? Optional.of(box(2, gap)) : Optional.empty();
    return new Recommendation(
        new Stratum("latex", "pine", Emission.PULSED, 1064),
        Requirements.USUAL,
        new Evidence(
            patches.size(),
            4,
            patches.stream().mapToInt(p -> p.readings().size()).sum(),
            (int) patches.stream().filter(p -> p.lastReading().outcome().charred()).count(),
            (int) patches.stream().filter(p -> p.lastReading().outcome().cleared(false)).count()),
        bench(Emission.PULSED),
        verdict,
        reasons(verdict),
        nextSteps(verdict),
        verdict == Verdict.WINDOW ? Optional.of(Standing.PROVISIONAL) : Optional.empty(),
        TriedKnobs.of(patches),
        switch (verdict) {
          case WINDOW -> 0.98;
          case NOT_YET -> 0.61;
          case NONE -> 0.04;
          case UNRELIABLE -> Double.NaN;
        },
        box,
        verdict == Verdict.WINDOW ? List.of(box(1, gap), box(3, gap)) : List.of(),
        Optional.of(map(2, gap)),
        OptionalDouble.of(25),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        patches,
        OptionalDouble.empty());
  }

  private static List<Reason> reasons(Verdict verdict) {
    return switch (verdict) {
      case WINDOW ->
          List.of(
              new Reason.PromisesKept(Requirements.USUAL, false, Optional.empty()),
              new Reason.Provisional(0.15));
      case NOT_YET ->
          List.of(
              new Reason.NoPatchCharred(),
              new Reason.BestMayNotClear(
                  forecast(42, 21, 2, 0.9), SpeedKnob.Kind.HAND, Requirements.USUAL),
              new Reason.CharNotSeen(3));
      case NONE -> List.of(new Reason.CharsWhereItClears(0.04));
      case UNRELIABLE ->
          List.of(
              new Reason.ModelFails(List.of(new FitFinding.Sampling(Event.CHAR, 0.9, false)), 0));
    };
  }

  private static List<NextStep> nextSteps(Verdict verdict) {
    return switch (verdict) {
      case WINDOW -> List.of(new NextStep.ConfirmOnPiece(3));
      case NOT_YET -> List.of(new NextStep.BurnNextPatches());
      case NONE -> List.of(new NextStep.UseAnotherMethod());
      case UNRELIABLE -> List.of(new NextStep.AmendOrSplit());
    };
  }

  /** Two patches to burn next where there is no window yet. */
  static Optional<NextPatches> next(Recommendation found) {
    return found.verdict() == Verdict.NOT_YET
        ? Optional.of(
            new NextPatches(
                found.bench(),
                found.asked(),
                Site.OFFCUT,
                Optional.of(found),
                new Progress.AsFound(found.reasons()),
                new Advice.InOrder(),
                List.of(
                    suggestion(1, found.bench(), 21, OptionalInt.empty()),
                    suggestion(2, found.bench(), 17, OptionalInt.of(1)))))
        : Optional.empty();
  }

  private static Suggestion suggestion(
      int number, RigSetup bench, double speed, OptionalInt onlyAfter) {
    Exposure exposure = bench.exposure(42, speed);
    return new Suggestion(
        number,
        Purpose.HOT_SIDE,
        Motive.HOT_SIDE,
        new Place("new board " + number, Optional.empty()),
        new DialSetting(
            42, speed, Math.log(exposure.doseJoulesPerCm2()), Math.log(exposure.intensity())),
        bench.settings(42, speed),
        8,
        0.1,
        0.3,
        0.8,
        new Gain.SeesDrift(),
        onlyAfter);
  }

  static double dose(double power, double speed) {
    return DOSE_AT_ONE_PERCENT_AND_ONE_MM_S * power / speed * 0.94;
  }

  private static double chance(double power, double speed, int passes, double even, double shift) {
    double x = Math.log(dose(power, speed)) + 0.4 * Math.log(power / 40) + 0.7 * Math.log(passes);
    return 1 / (1 + Math.exp(-(x - Math.log(even) + shift) / 0.11));
  }

  private static double charRisk(double power, double speed, int passes, double gap, double shift) {
    return chance(power, speed, passes, 11 * Math.exp(gap), shift);
  }

  private static double clearing(double power, double speed, int passes, double shift) {
    return chance(power, speed, passes, 11, -shift);
  }

  static Forecast forecast(double power, double speed, int passes, double gap) {
    RigSetup bench = bench(Emission.PULSED);
    return new Forecast(
        power,
        bench.watts(power),
        speed,
        passes,
        bench.exposure(power, speed).doseJoulesPerCm2(),
        bench.exposure(power, speed).intensity(),
        charRisk(power, speed, passes, gap, 0),
        charRisk(power, speed, passes, gap, 0.2),
        clearing(power, speed, passes, 0),
        clearing(power, speed, passes, 0.2),
        bench.exposure(power, speed).areaRate().netOf(passes).squareCentimetresPerMinute());
  }

  private static Box box(int passes, double gap) {
    double middle = 9.2 * Math.pow(passes, 0.7);
    Range power = new Range(37.6, 46.3);
    Range speed = new Range(middle * 0.9, middle * 1.08);
    return new Box(
        passes,
        power,
        speed,
        forecast(41.7, middle, passes, gap),
        forecast(power.high(), speed.low(), passes, gap),
        forecast(power.low(), speed.high(), passes, gap));
  }

  static WindowMap map(int passes, double gap) {
    List<Double> powers = spaced(15, 95, 40);
    List<Double> speeds = spaced(5, 60, 48);
    return new WindowMap(
        passes,
        powers,
        speeds,
        powers.stream()
            .map(p -> speeds.stream().map(s -> cell(p, s, passes, gap)).toList())
            .toList());
  }

  private static MapCell cell(double power, double speed, int passes, double gap) {
    double dose = dose(power, speed);
    return new MapCell(
        power,
        speed,
        dose > 3.2 && dose < 42 && power > 19 && power < 82,
        true,
        charRisk(power, speed, passes, gap, 0.2) <= Requirements.USUAL.charRisk(),
        clearing(power, speed, passes, 0.2) >= Requirements.USUAL.clearChance());
  }

  static List<Double> spaced(double low, double high, int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> low * Math.pow(high / low, i / (count - 1.0)))
        .toList();
  }

  private static List<Patch> patches(double gap) {
    List<Patch> patches = new ArrayList<>();
    double[][] settings = {
      {20, 30}, {20, 12}, {30, 40}, {30, 18}, {30, 9}, {40, 40}, {40, 24}, {40, 16}, {40, 16},
      {40, 8}, {50, 45}, {50, 28}, {50, 18}, {50, 10}, {60, 36}, {60, 22}, {70, 50}, {70, 28},
      {80, 40}, {80, 18}, {80, 9}, {60, 8}, {70, 13}
    };
    for (int i = 0; i < settings.length; i++) {
      boolean other = i % 7 == 3;
      patches.add(patch(i, settings[i][0], settings[i][1], gap, other));
    }
    return patches;
  }

  private static Patch patch(int i, double power, double speed, double gap, boolean otherWidth) {
    double wide = otherWidth ? 40 : 60;
    double shift = 0.12 * Math.sin(2.4 * i);
    return new Patch(
        id("patch" + i),
        "P-%04d".formatted(i + (i < 12 ? 1 : 3)),
        BURNED.plusHours(i),
        rig("Heron", Emission.PULSED),
        new Board(
            id("board" + i % 4),
            "boat door offcut " + (i % 4 + 1),
            "pine",
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.of("boathouse")),
        new Finish(id("finish"), "door paint", "latex", List.of()),
        new Settings(
            PowerSetting.percent(power),
            new HandPass(wide, speed * 60 / wide),
            new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(40, OptionalDouble.of(120)))),
        OptionalDouble.of(25),
        List.of(
            reading(i, 1, outcome(power, speed, 1, gap, shift)),
            reading(i, 2, outcome(power, speed, 2, gap, shift))));
  }

  private static Outcome outcome(double power, double speed, int passes, double gap, double shift) {
    boolean chars = charRisk(power, speed, passes, gap, shift) > 0.5;
    double clears = clearing(power, speed, passes, -shift);
    if (chars) {
      return clears > 0.3 ? Outcome.of(Mark.CHAR) : Outcome.of(Mark.CHAR, Mark.RESIDUE);
    }
    return clears > 0.5
        ? Outcome.of(Mark.CLEAN)
        : clears > 0.1 ? Outcome.of(Mark.TINT) : Outcome.of(Mark.RESIDUE);
  }

  private static Reading reading(int patch, int passes, Outcome outcome) {
    return new Reading(
        id("reading" + patch + "-" + passes),
        passes,
        outcome,
        Optional.empty(),
        OptionalDouble.empty(),
        BURNED.plusHours(patch).plusMinutes(20L * passes),
        Optional.of("Ilse"),
        Optional.empty());
  }

  static UUID id(String of) {
    return UUID.nameUUIDFromBytes(of.getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }
}
