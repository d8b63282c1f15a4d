package charline.pooling;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.model.CoatTerm;
import charline.model.Trials;
import charline.stat.Logistic;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.trial.Tone;
import charline.trial.WoodForm;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

/** Burns simulated patches with one invented rig, read after every pass up to the first char. */
public final class Yard {
  public static final OffsetDateTime DAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");

  private static final double RATED_WATTS = 200;
  private static final double WIDTH_MM = 60;
  private static final Spot SPOT = new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED);
  private static final Pulses PULSES = new Pulses(40, OptionalDouble.of(100));
  private static final double[] POWERS_PERCENT = {30, 40, 50, 60, 70, 85, 100};
  private static final double[] HANDS_MM_S = {12, 18, 27, 40};
  private static final int MOST_PASSES = 6;

  public static final Rig RIG =
      RigBuilder.heron(new UUID(1, 0))
          .named("heron")
          .ratedWatts(RATED_WATTS)
          .spotMillimetres(SPOT.diameterMillimetres())
          .repetitionKilohertz(PULSES.repetitionKilohertz())
          .pulseNanoseconds(PULSES.durationNanoseconds())
          .scanWidthMillimetres(WIDTH_MM)
          .build();

  private Yard() {}

  /** Dose of one pass in J/cm2. */
  static double dose(double percent, double hand) {
    return RATED_WATTS * percent / (WIDTH_MM * hand);
  }

  /** Mean fluence in J/cm2. */
  static double fluence(double percent) {
    double spot = SPOT.diameterMillimetres() / 10;
    return RATED_WATTS * percent / 100 / 40_000 / (Math.PI * spot * spot / 4);
  }

  /**
   * What is burned.
   *
   * @param family coating family
   * @param wood wood
   * @param charring what is true of char
   * @param clearing what is true of clearing, for a mid coat of 60 um
   * @param weights true weights of the coat's terms in ln dose
   * @param patches how many
   * @param boards on how many boards, in turn
   */
  public record Job(
      String family,
      String wood,
      Truth charring,
      Truth clearing,
      Map<CoatTerm, Double> weights,
      int patches,
      int boards) {}

  /** Which coat each patch has. */
  public interface Coats {
    Coat coat(int patch, int board);
  }

  /** Trials of a job; the same random numbers give the same trials. */
  public static Trials burn(Job job, Coats coats, Random random) {
    double[][] shifts = new double[job.boards()][2];
    for (double[] shift : shifts) {
      shift[0] = job.charring().omega() * random.nextGaussian();
      shift[1] = job.clearing().omega() * random.nextGaussian();
    }
    List<double[]> order = settings(job.patches(), random);
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < job.patches(); i++) {
      int board = i % job.boards();
      double percent = order.get(i)[0];
      double hand = order.get(i)[1];
      Coat coat = coats.coat(i, board);
      double chars = job.charring().firstPass(percent, hand, shifts[board][0], logistic(random));
      double clears =
          job.clearing()
              .firstPass(
                  percent, hand, shifts[board][1] + shift(coat, job.weights()), logistic(random));
      patches.add(patch(job, i, board, percent, hand, coat, readings(i, chars, clears)));
    }
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private static double shift(Coat coat, Map<CoatTerm, Double> weights) {
    double tone =
        coat.tone().map(t -> t == Tone.PALE ? 0.5 : t == Tone.DARK ? -0.5 : 0).orElse(0.0);
    double thickness = Math.log(coat.thicknessMicrometres().orElse(60) / 60);
    return weights.getOrDefault(CoatTerm.TONE, 0.0) * tone
        + weights.getOrDefault(CoatTerm.THICKNESS, 0.0) * thickness;
  }

  private static double logistic(Random random) {
    return Logistic.quantile(Math.max(1e-12, random.nextDouble()));
  }

  /** Places on the power by hand grid in random order, each once before any twice. */
  private static List<double[]> settings(int count, Random random) {
    List<double[]> order = new ArrayList<>();
    while (order.size() < count) {
      List<double[]> grid = new ArrayList<>();
      for (double power : POWERS_PERCENT) {
        for (double hand : HANDS_MM_S) {
          grid.add(new double[] {power, hand});
        }
      }
      Collections.shuffle(grid, random);
      order.addAll(grid);
    }
    return order;
  }

  private static List<Reading> readings(int patch, double chars, double clears) {
    List<Reading> all = new ArrayList<>();
    for (int passes = 1; passes <= MOST_PASSES; passes++) {
      Set<Mark> marks = EnumSet.noneOf(Mark.class);
      if (passes >= chars) {
        marks.add(Mark.CHAR);
      }
      if (passes < clears) {
        marks.add(Mark.RESIDUE);
      }
      if (marks.isEmpty()) {
        marks.add(Mark.CLEAN);
      }
      all.add(
          new Reading(
              new UUID(5L << 32 | patch, passes),
              passes,
              new Outcome(marks),
              Optional.empty(),
              OptionalDouble.empty(),
              DAY,
              Optional.empty(),
              Optional.empty()));
      if (passes >= chars) {
        break;
      }
    }
    return all;
  }

  private static Patch patch(
      Job job,
      int number,
      int board,
      double percent,
      double hand,
      Coat coat,
      List<Reading> readings) {
    return new Patch(
        new UUID(3, number),
        "Y-%04d".formatted(number),
        DAY,
        RIG,
        new Board(
            new UUID(job.wood().hashCode(), board),
            job.wood() + " " + board,
            job.wood(),
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty()),
        new Finish(
            new UUID(job.family().hashCode(), coat.hashCode()),
            job.family() + " " + coat,
            job.family(),
            List.of(coat)),
        new Settings(
            PowerSetting.percent(percent), new HandPass(WIDTH_MM, hand), SPOT, Optional.of(PULSES)),
        OptionalDouble.empty(),
        readings);
  }
}
