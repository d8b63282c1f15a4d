package charline.model.classical;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.trial.WoodForm;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** Patches of latex on a boathouse's pine, at whatever dose and fluence a test wants. */
final class ClassicalTrials {
  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-06-01T10:00:00+02:00");
  private static final double SPOT_MM = 0.5;
  private static final double REP_KHZ = 60;
  private static final double WIDTH_MM = 60;
  private final List<Patch> patches = new ArrayList<>();

  /** A reading to come: passes, outcome, depth in um or NaN. */
  record Seen(int passes, String outcome, double depth) {}

  static Seen seen(int passes, String outcome) {
    return new Seen(passes, outcome, Double.NaN);
  }

  /** Burns a patch; power follows from the fluence, hand speed from the dose. */
  ClassicalTrials burn(double doseJoulesPerCm2, double fluenceJoulesPerCm2, Seen... seen) {
    return burnOn("b" + patches.size() % 3, doseJoulesPerCm2, fluenceJoulesPerCm2, seen);
  }

  /** As {@link #burn}, on a board of one's own. */
  ClassicalTrials burnOn(
      String board, double doseJoulesPerCm2, double fluenceJoulesPerCm2, Seen... seen) {
    String code = "P-%04d".formatted(patches.size() + 1);
    double spotArea = Math.PI * SPOT_MM * SPOT_MM / 400; // cm2
    double watts = fluenceJoulesPerCm2 * spotArea * REP_KHZ * 1000;
    double handMillimetres = watts / (WIDTH_MM / 10 * doseJoulesPerCm2) * 10;
    List<Reading> readings = new ArrayList<>();
    for (Seen s : seen) {
      readings.add(
          new Reading(
              id(code + s.passes()),
              s.passes(),
              Outcome.parse(s.outcome()),
              Optional.empty(),
              Double.isNaN(s.depth()) ? OptionalDouble.empty() : OptionalDouble.of(s.depth()),
              DAY,
              Optional.empty(),
              Optional.empty()));
    }
    patches.add(
        new Patch(
            id(code),
            code,
            DAY,
            rig(),
            new Board(
                id(board),
                board,
                "pine",
                WoodForm.SOLID,
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty()),
            new Finish(id("f"), "wall latex", "latex", List.of()),
            new Settings(
                PowerSetting.watts(watts),
                new HandPass(WIDTH_MM, handMillimetres),
                new Spot(SPOT_MM, SpotDefinition.ONE_OVER_E_SQUARED),
                Optional.of(new Pulses(REP_KHZ, OptionalDouble.empty()))),
            OptionalDouble.empty(),
            readings));
    return this;
  }

  List<Patch> patches() {
    return patches;
  }

  Trials trials() {
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private static Rig rig() {
    return RigBuilder.heron(id("rig"))
        .named("heron")
        .ratedWatts(300)
        .spotMillimetres(SPOT_MM)
        .repetitionKilohertz(REP_KHZ)
        .pulseNanoseconds(OptionalDouble.empty())
        .scanWidthMillimetres(WIDTH_MM)
        .build();
  }

  private static UUID id(String name) {
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }
}
