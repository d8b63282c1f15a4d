package charline.model.check;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Mark;
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
import java.util.Random;
import java.util.UUID;

/**
 * Trials that follow the model exactly: its parameters drawn near the middle of the priors, patches
 * spread over powers and hand speeds that reach from too cold to too hot.
 */
final class InventedStratum {
  private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-06-01T12:00:00Z");
  private static final Finish FINISH =
      new Finish(id("finish"), "boathouse door", "latex", List.of());
  private static final Rig RIG = RigBuilder.heron(id("rig")).named("rig").build();

  /** Noise of a patch, in units of sigma. */
  interface Noise {
    double draw(Random random);
  }

  static final Noise LOGISTIC =
      random -> {
        double u = random.nextDouble();
        return Math.log(u / (1 - u));
      };

  private final Random random;
  private final Noise noise;
  private final double misjudged;
  private final double[] charring;
  private final double[] clearing;

  InventedStratum(long seed) {
    this(seed, LOGISTIC, 1, 0.5, 0);
  }

  /**
   * @param widen factor on sigma
   * @param mostOmega board spread is uniform up to this
   * @param misjudged share of readings judged wrongly
   */
  InventedStratum(long seed, Noise noise, double widen, double mostOmega, double misjudged) {
    random = new Random(seed);
    this.noise = noise;
    this.misjudged = misjudged;
    charring = parameters(Math.log(30), 0.4, 0.6, widen, mostOmega);
    clearing = parameters(Math.log(10), 0.7, 0.8, widen, mostOmega);
  }

  private double[] parameters(double tau, double phi, double psi, double widen, double mostOmega) {
    return new double[] {
      tau + 0.4 * random.nextGaussian(),
      Math.max(0.05, phi + 0.25 * random.nextGaussian()),
      Math.max(0.1, psi + 0.2 * random.nextGaussian()),
      widen * 0.25 * Math.exp(0.35 * random.nextGaussian()),
      mostOmega * random.nextDouble()
    };
  }

  /** Patches on boards in turn, read after each pass up to the last, stopped early by char. */
  Trials burn(int count, int boards) {
    double[] charShift = shifts(boards, charring[4]);
    double[] clearShift = shifts(boards, clearing[4]);
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int board = i % boards;
      double power = 30 + 10 * random.nextInt(8);
      double middle = (charring[0] + clearing[0]) / 2;
      double dose = Math.exp(middle - 1.1 + 2.2 * random.nextDouble());
      double speed = power * 2 / (6 * dose / 10);
      int last = 1 + random.nextInt(3);
      patches.add(
          patch(
              "P-%04d".formatted(i + 1),
              board,
              power,
              Math.round(speed * 10) / 10.0,
              firstPass(charring, charShift[board], dose, power),
              firstPass(clearing, clearShift[board], dose, power),
              last));
    }
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private double[] shifts(int boards, double omega) {
    return random.doubles(boards).map(u -> omega * random.nextGaussian()).toArray();
  }

  private double firstPass(double[] p, double shift, double dose, double power) {
    double lnRelative = Math.log(power / 60);
    return Math.exp(
        (p[0] + shift + p[3] * noise.draw(random) - Math.log(dose) - p[1] * lnRelative) / p[2]);
  }

  private Patch patch(
      String code, int board, double power, double speed, double chars, double clears, int last) {
    List<Reading> readings = new ArrayList<>();
    boolean charredBefore = false;
    for (int n = 1; n <= last; n++) {
      boolean charred = charredBefore || (random.nextDouble() < misjudged) != (n >= chars);
      boolean cleared = (random.nextDouble() < misjudged) != (n >= clears);
      charredBefore = charred;
      Outcome outcome =
          charred
              ? cleared ? Outcome.of(Mark.CHAR) : Outcome.of(Mark.CHAR, Mark.RESIDUE)
              : Outcome.of(cleared ? Mark.CLEAN : Mark.RESIDUE);
      readings.add(reading(code, n, outcome));
      if (charred) {
        break;
      }
    }
    return patch(code, board, power, speed, readings);
  }

  static Reading reading(String code, int passes, Outcome outcome) {
    return new Reading(
        id(code + "/" + passes),
        passes,
        outcome,
        Optional.empty(),
        OptionalDouble.empty(),
        NOON,
        Optional.empty(),
        Optional.empty());
  }

  static Patch patch(String code, int board, double power, double speed, List<Reading> readings) {
    return new Patch(
        id(code),
        code,
        NOON,
        RIG,
        new Board(
            id("board" + board),
            "B-" + (board + 1),
            "pine",
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty()),
        FINISH,
        new Settings(
            PowerSetting.percent(power),
            new HandPass(60, speed),
            new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(40, OptionalDouble.of(100)))),
        OptionalDouble.empty(),
        readings);
  }

  private static UUID id(String name) {
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }
}
