package charline.timing;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;

/**
 * Writes {@code reports/benchmarks.md}. Run by {@code mvn -Pdist,benchmarks -DskipTests verify};
 * needs the sqlite3 shell and R with lme4, and a machine with nothing else to do. {@code
 * -Dcharline.readings=100000} makes the large log smaller.
 */
final class Timing {
  private static final double BUSY = 0.1;
  private static final int WATCHED_MILLISECONDS = 5000;
  static final int READINGS = Integer.getInteger("charline.readings", 1_000_000);

  /** What these sizes mean to a shop: plain arithmetic on an assumed bench, not a survey. */
  private static final String SCALE =
      """

      ## How large a log gets

      Assume a bench that burns thirty patches a day on four days of the week and reads each three times: in a year of 48 weeks that is some
      17,000 readings, and a million readings are almost sixty years of it. So one file is enough, and nothing has to be moved out of it. A
      shop with several benches serves one log to all of them (`charline bench --share`), or keeps a log for each bench and brings them
      together with `charline merge`.
      """;

  /**
   * How long something may take, as a share of what a person could use instead.
   *
   * @param words what is aimed at
   * @param fails ratio above which this command ends with an error: something got slower
   */
  record Goal(String words, double fails) {
    static Goal atMost(double ratio, double fails) {
      return new Goal(String.format(Locale.ROOT, "at most %.3g times as long", ratio), fails);
    }

    static Goal faster(double times, double failsBelow) {
      return new Goal(String.format(Locale.ROOT, "%.3g times faster", times), 1 / failsBelow);
    }

    static Goal none(double fails) {
      return new Goal("none", fails);
    }
  }

  /**
   * One line of the report.
   *
   * @param what is done
   * @param ours seconds
   * @param rival what a person could use instead
   * @param theirs seconds, by the rival in the same run
   * @param bound what bounds our figure, or else was found
   */
  record Line(String what, double ours, String rival, double theirs, Goal goal, String bound) {
    private double ratio() {
      return ours / theirs;
    }

    boolean tooSlow() {
      return ratio() > goal.fails;
    }

    String row() {
      String times =
          ours <= 0
              ? "too little to measure"
              : ratio() >= 0.995
                  ? String.format(Locale.ROOT, "%.2g times as long", ratio())
                  : String.format(Locale.ROOT, "%.3g times faster", 1 / ratio());
      return String.format(
          Locale.ROOT,
          "| %s | %s | %s: %s | %s | %s | %s |",
          what,
          shown(ours),
          rival,
          shown(theirs),
          times,
          goal.words,
          bound);
    }
  }

  private Timing() {}

  /** A difference of two medians may come out at or below nothing. */
  static String shown(double seconds) {
    if (seconds <= 0) {
      return "within the scatter of the runs";
    }
    return seconds >= 1
        ? String.format(Locale.ROOT, "%.3g s", seconds)
        : String.format(Locale.ROOT, "%.3g ms", seconds * 1000);
  }

  /** Takes the image made by {@code -Pdist} and the file to write. */
  public static void main(String[] args) throws Exception {
    Path charline = Path.of(args[0], "bin", "charline").toAbsolutePath();
    Path folder = Files.createTempDirectory("charline-timing");
    double busy = busy();
    List<Line> lines = new ArrayList<>();
    say(lines, AnswerTiming.lines(charline, folder));
    say(lines, StartTiming.lines(charline, folder));
    say(lines, FitTiming.lines(folder));
    LogTiming log = new LogTiming(charline, folder);
    say(lines, log.lines());
    List<String> growth = new ArrayList<>();
    for (int readings = 1000; readings <= READINGS; readings *= 10) {
      growth.add(log.allWindows(readings));
      System.out.println("window --all: " + growth.get(growth.size() - 1));
    }
    List<String> costs = log.costs();
    Files.writeString(
        Path.of(args[1]),
        report(javaOf(Path.of(args[0])), lines, growth, costs, Math.max(busy, busy())));
    List<Line> slow = lines.stream().filter(Line::tooSlow).toList();
    slow.forEach(line -> System.out.println("Slower than it was: " + line.row()));
    if (!slow.isEmpty()) {
      System.exit(1);
    }
  }

  /** The version of Java in an image, as its own file says. */
  private static String javaOf(Path image) throws IOException {
    Properties release = new Properties();
    try (Reader in = Files.newBufferedReader(image.resolve("runtime/release"))) {
      release.load(in);
    }
    return release.getProperty("JAVA_VERSION").replace("\"", "");
  }

  private static void say(List<Line> lines, List<Line> more) {
    lines.addAll(more);
    more.forEach(line -> System.out.println(line.row()));
  }

  /** Share of the machine that others take while this program sleeps. */
  private static double busy() throws Exception {
    long[] before = ticks();
    Thread.sleep(WATCHED_MILLISECONDS);
    long[] after = ticks();
    return 1 - (double) (after[0] - before[0]) / (after[1] - before[1]);
  }

  /** Idle ticks, waiting for a disk included, and all ticks since the machine was started. */
  private static long[] ticks() throws IOException {
    String[] words = Files.readAllLines(Path.of("/proc/stat")).get(0).split(" +");
    long all = 0;
    for (int i = 1; i <= 8; i++) {
      all += Long.parseLong(words[i]);
    }
    return new long[] {Long.parseLong(words[4]) + Long.parseLong(words[5]), all};
  }

  private static String report(
      String java, List<Line> lines, List<String> growth, List<String> costs, double busy) {
    StringBuilder text = new StringBuilder();
    text.append("# Speed\n\n");
    text.append(
        """
        Each ratio compares charline with something you could use instead, in the same run; short tasks alternate. To measure again,
        run `mvn -Pdist,benchmarks -DskipTests verify`, which writes this page; it needs the sqlite3 shell and R with lme4. Ratios
        carry over to other machines, seconds do not. Neither can be trusted on a busy machine. The command ends with an error where a
        ratio is well above what it was when this page was last looked at.

        """);
    text.append(
        String.format(
            Locale.ROOT,
            "Measured %s, charline installed with Java %s, the jar and \"hello\" on Java %s, %d cores."
                + " Used by other processes before or after: %.0f %%%s.%n%n",
            LocalDate.now(),
            java,
            System.getProperty("java.version"),
            Runtime.getRuntime().availableProcessors(),
            100 * busy,
            busy > BUSY
                ? ", so **other processes were using the machine; do not rely on the figures**"
                : ""));
    text.append("| what | charline | instead | ratio | goal | what limits it |\n");
    text.append("| --- | --- | --- | --- | --- | --- |\n");
    lines.forEach(line -> text.append(line.row()).append('\n'));
    text.append("\n## How `window --all` grows, over 200 strata\n\n");
    text.append("| readings | seconds | largest memory |\n| --- | --- | --- |\n");
    growth.forEach(row -> text.append(row).append('\n'));
    text.append(
        String.format(
            Locale.ROOT,
            "%n## What else a log of %,d readings costs%n%n"
                + "| what | seconds | largest memory |%n| --- | --- | --- |%n",
            READINGS));
    costs.forEach(row -> text.append(row).append('\n'));
    text.append(SCALE);
    return text.toString();
  }
}
