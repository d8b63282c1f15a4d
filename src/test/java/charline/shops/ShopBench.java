package charline.shops;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.WoodForm;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;

/** The one rig, wood and finish of every simulated shop, invented like the shops. */
public final class ShopBench {
  static final OffsetDateTime DAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");

  private static final double RATED_WATTS = 200;
  private static final double WIDTH_MM = 60;
  private static final Spot SPOT = new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED);
  private static final Pulses PULSES = new Pulses(40, OptionalDouble.of(100));

  static final Rig RIG =
      RigBuilder.heron(new UUID(1, 0))
          .ratedWatts(RATED_WATTS)
          .spotMillimetres(SPOT.diameterMillimetres())
          .repetitionKilohertz(PULSES.repetitionKilohertz())
          .pulseNanoseconds(PULSES.durationNanoseconds())
          .scanWidthMillimetres(WIDTH_MM)
          .build();

  private static final Finish FINISH = new Finish(new UUID(2, 0), "shutter", "latex", List.of());

  private ShopBench() {}

  /**
   * A reading.
   *
   * @param passes after how many
   * @param charred the wood was seen charred
   * @param cleared the finish was seen gone
   */
  public record Seen(int passes, boolean charred, boolean cleared) {}

  /** Dose of one pass in J/cm2. */
  static double dose(double percent, double handMillimetresPerSecond) {
    return 100 * RATED_WATTS * percent / 100 / (WIDTH_MM * handMillimetresPerSecond);
  }

  /** Mean fluence in J/cm2. */
  static double intensity(double percent) {
    double spotCm = SPOT.diameterMillimetres() / 10;
    return RATED_WATTS
        * percent
        / 100
        / (1000 * PULSES.repetitionKilohertz())
        / (Math.PI * spotCm * spotCm / 4);
  }

  static Patch patch(int number, int board, double percent, double hand, List<Seen> seen) {
    return new Patch(
        new UUID(3, number),
        "S-%04d".formatted(number),
        DAY,
        RIG,
        new Board(
            new UUID(4, board),
            "board " + board,
            "pine",
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty()),
        FINISH,
        new Settings(
            PowerSetting.percent(percent), new HandPass(WIDTH_MM, hand), SPOT, Optional.of(PULSES)),
        OptionalDouble.empty(),
        seen.stream().map(s -> reading(number, s)).toList());
  }

  private static Reading reading(int patch, Seen seen) {
    Set<Mark> marks = EnumSet.noneOf(Mark.class);
    if (seen.charred()) {
      marks.add(Mark.CHAR);
    }
    if (!seen.cleared()) {
      marks.add(Mark.RESIDUE);
    }
    if (marks.isEmpty()) {
      marks.add(Mark.CLEAN);
    }
    return new Reading(
        new UUID(5L << 32 | patch, seen.passes()),
        seen.passes(),
        new Outcome(marks),
        Optional.empty(),
        OptionalDouble.empty(),
        DAY,
        Optional.empty(),
        Optional.empty());
  }
}
