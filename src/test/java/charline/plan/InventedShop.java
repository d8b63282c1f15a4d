package charline.plan;

import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.shops.Scenario;
import charline.shops.ShopBench;
import charline.shops.ShopBench.Seen;
import charline.shops.Truth;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;

/** A shop with known laws that burns what it is told to. Invented, like everything in it. */
public final class InventedShop {
  public static final OffsetDateTime DAY = OffsetDateTime.parse("2026-11-02T08:00:00+01:00");

  public static final Rig HERON = ShopBench.RIG;

  public static final RigSetup BENCH = bench(HERON);
  private static final Finish FINISH = new Finish(new UUID(2, 0), "shutter", "latex", List.of());

  final Truth truth;
  private final Random random;
  private final List<double[]> shifts = new ArrayList<>();
  private final List<Patch> patches = new ArrayList<>();

  private InventedShop(Truth truth, Random random) {
    this.truth = truth;
    this.random = random;
  }

  static RigSetup bench(Rig rig) {
    return new RigSetup(
        rig,
        DAY,
        new Spot(rig.spotMillimetres().orElseThrow(), rig.spotDefinition()),
        Optional.of(new Pulses(rig.repetitionKilohertz().orElseThrow(), rig.pulseNanoseconds())),
        new SpeedKnob(SpeedKnob.Kind.HAND, rig.scanWidthMillimetres().orElseThrow()));
  }

  /** Shop number {@code number} of a scenario; the same number gives the same laws and boards. */
  static InventedShop draw(Scenario scenario, int number) {
    Random random = new Random(1_000_003L * number + 31L * scenario.code().hashCode() + 77);
    return new InventedShop(Truth.draw(scenario, random), random);
  }

  /** A shop whose laws are as the models have them. */
  public static InventedShop draw(double gap, double boardSpread, int number) {
    return draw(Scenario.usual().withGap(gap).withBoardSpread(boardSpread), number);
  }

  public List<Patch> patches() {
    return patches;
  }

  static Board board(int number) {
    return ShopBench.board(new UUID(4, number), "boathouse-" + (number + 1), "pine");
  }

  /** Boards that carry a patch. */
  int boards() {
    return (int) patches.stream().map(p -> p.board().id()).distinct().count();
  }

  /** Burns a patch on a board, judging after every pass up to the first char. */
  public Patch burn(Settings settings, int board, int passes) {
    while (shifts.size() <= board) {
      shifts.add(new double[] {truth.shift(random), truth.shift(random)});
    }
    int number = patches.size();
    Patch unread = patch(number, settings, board, List.of(new Seen(1, false, false)));
    double lnDose = Math.log(unread.exposure().doseJoulesPerCm2());
    double lnIntensity = Math.log(unread.exposure().intensity());
    Truth.Outcome came = truth.burn(lnDose, lnIntensity, shifts.get(board), random);
    int[] reads = IntStream.rangeClosed(1, passes).toArray();
    Patch patch = patch(number, settings, board, truth.seen(reads, came, random));
    patches.add(patch);
    return patch;
  }

  private static Patch patch(int number, Settings settings, int board, List<Seen> seen) {
    OffsetDateTime at = DAY.plusMinutes(20L * number);
    return new Patch(
        new UUID(3, number),
        "P-%04d".formatted(number + 1),
        at,
        HERON,
        board(board),
        FINISH,
        settings,
        OptionalDouble.of(25),
        ShopBench.readings(number, seen, at));
  }
}
