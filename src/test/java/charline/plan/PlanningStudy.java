package charline.plan;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Lets invented shops burn in four manners and writes {@code reports/planning.md}. Run by {@code
 * mvn -Pplanning test-compile exec:java}; finished shops are kept in {@code target/planning}, so a
 * run that was stopped goes on where it was.
 */
public final class PlanningStudy {
  static final double BOARDS_APART = 0.15;

  /** Shops below this one served to choose the manner of choosing, so they prove nothing. */
  static final int FIRST_SHOP = 1000;

  private static final Path DONE = Path.of("target", "planning", "campaigns.csv");
  private static final Path REPORT = Path.of("reports", "planning.md");

  private PlanningStudy() {}

  /**
   * One campaign to run.
   *
   * @param gap ln of the dose that chars 5 % over the dose that clears 90 %
   * @param number of the shop
   */
  record Task(double gap, int number, Manner manner) {
    String key() {
      return "%s,%d,%s".formatted(gap, number, manner);
    }
  }

  /** Arguments: how many shops of each kind; 24 unless given. */
  public static void main(String[] args) throws Exception {
    int shops = args.length > 0 ? Integer.parseInt(args[0]) : 24;
    Map<String, Campaign> done = load();
    Instant begun = Instant.now();
    ExecutorService workers = Executors.newFixedThreadPool(2);
    List<Future<?>> running = new ArrayList<>();
    for (int number = FIRST_SHOP; number < FIRST_SHOP + shops; number++) {
      for (double gap : PlanningReport.GAPS) {
        for (Manner manner : Manner.values()) {
          Task task = new Task(gap, number, manner);
          if (!done.containsKey(task.key())) {
            running.add(workers.submit(() -> run(task, done)));
          }
        }
      }
    }
    for (Future<?> each : running) {
      each.get();
    }
    workers.shutdown();
    long seconds = Duration.between(begun, Instant.now()).toSeconds();
    Files.createDirectories(REPORT.getParent());
    Files.writeString(REPORT, new PlanningReport(done, shops).text());
    System.out.printf(
        "%s written: %d campaigns, %d of them run now in %d s.%n",
        REPORT, done.size(), running.size(), seconds);
  }

  private static void run(Task task, Map<String, Campaign> done) {
    Campaign c = Campaign.run(task.gap(), BOARDS_APART, task.number(), task.manner());
    synchronized (done) {
      done.put(task.key(), c);
      save(
          "%s,%d,%s,%s,%d,%s%n"
              .formatted(task.key(), c.patches(), c.found(), c.kept(), c.charred(), c.broken()));
    }
  }

  private static void save(String line) {
    try {
      Files.createDirectories(DONE.getParent());
      Files.writeString(
          DONE, line, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Map<String, Campaign> load() throws IOException {
    Map<String, Campaign> done = new HashMap<>();
    if (Files.exists(DONE)) {
      for (String line : Files.readAllLines(DONE)) {
        String[] f = line.split(",");
        if (f.length == 8) {
          done.put(
              String.join(",", f[0], f[1], f[2]),
              new Campaign(
                  Integer.parseInt(f[3]),
                  Boolean.parseBoolean(f[4]),
                  Boolean.parseBoolean(f[5]),
                  Integer.parseInt(f[6]),
                  Boolean.parseBoolean(f[7])));
        }
      }
    }
    return done;
  }
}
