package charline.shops;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Judges every simulated shop and writes {@code reports/validation.md} with its figures: {@code mvn
 * -q test-compile exec:java@validation}. Interrupted, it goes on where it stopped; the first
 * argument is the number of shops per scenario.
 */
public final class Validation {
  private static final int SHOPS_PER_SCENARIO = 100;

  /** No shop before this one may be judged here: they served to choose priors and rules. */
  private static final int FIRST_SHOP = 60_000;

  /** The scenario that most is said of has twice as many. */
  private static final int TWICE = 2;

  private static final int CORES = Runtime.getRuntime().availableProcessors();

  private Validation() {}

  public static void main(String[] args) throws Exception {
    int shops = args.length > 0 ? Integer.parseInt(args[0]) : SHOPS_PER_SCENARIO;
    Results results = Results.in(Path.of("target"));
    long started = System.nanoTime();
    int judged = run(results, shops);
    System.out.printf(
        Locale.ROOT,
        "%d shops judged in %d s on %d cores.%n",
        judged,
        Duration.ofNanos(System.nanoTime() - started).toSeconds(),
        CORES);
    List<Tally> tallies =
        Scenarios.all().stream()
            .map(s -> new Tally(s, results.of(s, FIRST_SHOP, count(s, shops))))
            .toList();
    new ValidationReport(tallies, runTime(tallies)).write(Path.of("reports"));
    System.out.println("Written: reports/validation.md.");
  }

  /** Over all sittings, since an interrupted run goes on where it stopped. */
  private static String runTime(List<Tally> tallies) {
    double seconds =
        tallies.stream().flatMap(t -> t.shops().stream()).mapToDouble(Judged::seconds).sum();
    return String.format(
        Locale.ROOT, "run time %.0f minutes on %d cores", seconds / 60 / CORES, CORES);
  }

  /** Judges the shops that are not judged yet and says how many those were. */
  private static int run(Results results, int shops)
      throws InterruptedException, ExecutionException {
    ExecutorService workers = Executors.newFixedThreadPool(CORES);
    List<Future<?>> open = new ArrayList<>();
    // Number by number over all scenarios, so that a run cut short has something of each.
    for (int number = 0; number < TWICE * shops; number++) {
      for (Scenario scenario : Scenarios.all()) {
        int shop = FIRST_SHOP + number;
        if (number < count(scenario, shops) && !results.has(scenario, shop)) {
          open.add(workers.submit(() -> judge(results, scenario, shop)));
        }
      }
    }
    try {
      for (int done = 0; done < open.size(); done++) {
        open.get(done).get();
        if (done % 100 == 99) {
          System.out.printf(Locale.ROOT, "%d of %d shops judged.%n", done + 1, open.size());
        }
      }
    } finally {
      workers.shutdownNow();
    }
    return open.size();
  }

  private static int count(Scenario scenario, int shops) {
    return scenario.equals(Scenario.usual()) ? TWICE * shops : shops;
  }

  private static Void judge(Results results, Scenario scenario, int number) throws IOException {
    results.add(Judge.judge(scenario, number, Scenarios.withPieces().contains(scenario)));
    return null;
  }
}
