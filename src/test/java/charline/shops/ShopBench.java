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
  public static final OffsetDateTime DAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");

  private static final double RATED_WATTS = 200;
  private static final double WIDTH_MM = 60;
  private static final Spot SPOT = new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED);
  private static final Pulses PULSES = new Pulses(40, OptionalDouble.of(100));

  public static final Rig RIG =
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
  public static double dose(double percent, double handMillimetresPerSecond) {
    return 100 * RATED_WATTS * percent / 100 / (WIDTH_MM * handMillimetresPerSecond);
  }

  /** Mean fluence in J/cm2. */
  public static double intensity(double percent) {
    double spotCm = SPOT.diameterMillimetres() / 10;
    return RATED_WATTS
        * percent
        / 100
        / (1000 * PULSES.repetitionKilohertz())
        / (Math.PI * spotCm * spotCm / 4);
  }

  /** A law with the models' own noise whose F0 is the fluence at 60 % power. */
  public static Law law(double tau, double phi, double psi, double sigma, double omega) {
    return new Law(tau, phi, psi, sigma, omega, Noise.LOGISTIC, Math.log(intensity(60)));
  }

  /** Settings that differ in power and hand speed alone. */
  public static Settings settings(double percent, double handMillimetresPerSecond) {
    return new Settings(
        PowerSetting.percent(percent),
        new HandPass(WIDTH_MM, handMillimetresPerSecond),
        SPOT,
        Optional.of(PULSES));
  }

  /** A solid board of some wood. */
  public static Board board(UUID id, String name, String wood) {
    return new Board(
        id, name, wood, WoodForm.SOLID, Optional.empty(), OptionalDouble.empty(), Optional.empty());
  }

  public static Patch patch(int number, int board, double percent, double hand, List<Seen> seen) {
    return new Patch(
        new UUID(3, number),
        "S-%04d".formatted(number),
        DAY,
        RIG,
        board(new UUID(4, board), "board " + board, "pine"),
        FINISH,
        settings(percent, hand),
        OptionalDouble.empty(),
        readings(number, seen, DAY));
  }

  /** What was seen, as the readings of a patch. */
  public static List<Reading> readings(int patch, List<Seen> seen, OffsetDateTime at) {
    return seen.stream().map(s -> reading(patch, s, at)).toList();
  }

  private static Reading reading(int patch, Seen seen, OffsetDateTime at) {
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
        at,
        Optional.empty(),
        Optional.empty());
  }
}
