package charline.timing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;

/**
 * One run of a program, or of work in this one.
 *
 * @param seconds on the clock
 * @param megabytes largest memory held, 0 where not asked
 * @param out what it printed
 */
record Run(double seconds, double megabytes, String out) {
  /** Runs a program to its end, with nothing kept from before; it must end well. */
  static Run of(Path folder, String... words) throws IOException, InterruptedException {
    return of(folder, Files.createTempDirectory(folder, "fits"), words);
  }

  /** The same with what runs before it kept in a folder of fits. */
  static Run of(Path folder, Path fits, String... words) throws IOException, InterruptedException {
    Path usage = Files.createTempFile("usage", ".txt");
    List<String> all =
        new ArrayList<>(List.of("/usr/bin/time", "-f", "%M", "-o", usage.toString()));
    all.addAll(Arrays.asList(words));
    long before = System.nanoTime();
    ProcessBuilder start =
        new ProcessBuilder(all).directory(folder.toFile()).redirectErrorStream(true);
    start.environment().put("CHARLINE_CACHE", fits.toAbsolutePath().toString());
    Process process = start.start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes());
    int code = process.waitFor();
    double seconds = (System.nanoTime() - before) / 1e9;
    boolean answer =
        code == 0 || code == 1 && String.join(" ", words).contains("charline"); // 1: no
    if (!answer) {
      throw new IOException(String.join(" ", words) + " ended with " + code + ":\n" + out);
    }
    String[] lines = Files.readString(usage).split("\n");
    Files.delete(usage);
    return new Run(seconds, Double.parseDouble(lines[lines.length - 1]) / 1024, out);
  }

  /**
   * The median of several runs taken in turns, so that what else the machine does hits all alike.
   */
  static double[] medians(int rounds, Timed... works) throws Exception {
    double[][] seconds = new double[works.length][rounds];
    for (int round = 0; round < rounds; round++) {
      for (int i = 0; i < works.length; i++) {
        seconds[i][round] = works[i].seconds();
      }
    }
    return Arrays.stream(seconds).mapToDouble(Run::median).toArray();
  }

  /** Work that says how long it took. */
  @FunctionalInterface
  interface Timed {
    double seconds() throws Exception;
  }

  /** Time of work in this program. */
  static <T> double seconds(Supplier<T> work) {
    long before = System.nanoTime();
    if (work.get() == null) {
      throw new IllegalStateException("The work must give a result.");
    }
    return (System.nanoTime() - before) / 1e9;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
