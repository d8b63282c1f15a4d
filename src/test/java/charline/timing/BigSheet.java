package charline.timing;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * A trial sheet of any size: every coating on every wood, burned by chance from a known truth. No
 * board has room for more than some twenty patches, so a large log has many boards.
 */
final class BigSheet {
  private static final int PASSES = 4;
  private static final int PATCHES_A_BOARD = 20;

  private BigSheet() {}

  /**
   * Writes readings at 1 to 4 passes on every patch.
   *
   * @param strata pairs of family and wood, as {@code family,wood}
   */
  static void write(Path file, int readings, List<String> strata, long seed) throws IOException {
    Random random = new Random(seed);
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write(
          "patch,burned_at,rig,board,wood,finish,family,power_pct,hand_mm_s,passes,outcome\n");
      for (int p = 0; p < readings / PASSES; p++) {
        int s = p % strata.size();
        String[] pair = strata.get(s).split(",");
        int board = p / strata.size() / PATCHES_A_BOARD;
        double power = 30 + 70 * random.nextDouble();
        double speed = 10 + 40 * random.nextDouble();
        // Rig heron: 300 W over 60 mm; dose in J/cm2.
        double lnDose = Math.log(300 * power / 100 / (6 * speed / 10));
        double shift = 0.1 * (board % 5 - 2);
        double clears = Math.log(8) + shift + 0.25 * logistic(random);
        double chars = Math.log(24) + shift + 0.25 * logistic(random);
        for (int n = 1; n <= PASSES; n++) {
          boolean charred = lnDose + 0.6 * Math.log(n) > chars;
          boolean cleared = lnDose + 0.8 * Math.log(n) > clears;
          out.write(
              String.format(
                  Locale.ROOT,
                  "B-%d,2026-09-%02d,heron,%s %s %d,%s,%s coat,%s,%.1f,%.1f,%d,%s%n",
                  p,
                  1 + p % 28,
                  pair[0],
                  pair[1],
                  board,
                  pair[1],
                  pair[0],
                  pair[0],
                  power,
                  speed,
                  n,
                  charred ? (cleared ? "char" : "char+residue") : cleared ? "clean" : "residue"));
        }
      }
    }
  }

  private static double logistic(Random random) {
    double u = random.nextDouble();
    return Math.log(u / (1 - u));
  }
}
