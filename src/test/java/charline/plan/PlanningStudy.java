package charline.plan;

import charline.shops.Scenario;
import charline.shops.Scenarios;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;

/**
 * Lets invented shops burn in six manners and writes {@code reports/planning.md}. Run by {@code mvn
 * -Pplanning test-compile exec:java}; a run that was stopped goes on where it was.
 */
public final class PlanningStudy {
  /** Shops below this one served to choose the manner of choosing, so they prove nothing. */
  static final int FIRST_SHOP = 10_000;

  /** So many times as many shops are drawn of each scenario that the goal is about. */
  private static final int GOAL_TIMES = 2;

  private static final int USUAL_FEW = 20;

  private static final List<String> OTHERS =
      List.of(
          "wide",
          "gumbel-early",
          "boards-0.3",
          "boards-0.5",
          "weak",
          "strong",
          "misgraded",
          "gap--0.3");

  private static final int CORES = 2;
  private static final Path DONE = Path.of("target", "planning");
  private static final Path REPORT = Path.of("reports", "planning.md");

  private PlanningStudy() {}

  /** Scenarios that the goal is about, the narrowest gap first. */
  static List<Scenario> goal() {
    Scenario usual = Scenario.usual();
    return List.of(
        usual.withGap(0.6).named("gap-0.6", "model true, gap e^0.6"),
        usual.withGap(0.8).named("gap-0.8", "model true, gap e^0.8"),
        usual.named("usual", "model true, gap e^1, boards 0.15"));
  }

  /** Scenarios of the validation report in which something is not as the planner takes it to be. */
  static List<Scenario> others() {
    return Scenarios.all().stream().filter(s -> OTHERS.contains(s.code())).toList();
  }

  static List<Scenario> all() {
    return Stream.concat(goal().stream(), others().stream()).toList();
  }

  /** How many shops of a scenario, where {@code few} are drawn of one beyond the goal. */
  static int shops(Scenario scenario, int few) {
    return goal().contains(scenario) ? GOAL_TIMES * few : few;
  }

  /** Arguments: how many shops of each scenario, twice as many of those of the goal. */
  public static void main(String[] args) throws Exception {
    int few = args.length > 0 ? Integer.parseInt(args[0]) : USUAL_FEW;
    Campaigns campaigns = Campaigns.in(DONE);
    Instant begun = Instant.now();
    int run = run(campaigns, few);
    Files.createDirectories(REPORT.getParent());
    Files.writeString(REPORT, new PlanningReport(campaigns, few, CORES).text());
    System.out.printf(
        "%s written; %d campaigns run now in %d s.%n",
        REPORT, run, Duration.between(begun, Instant.now()).toSeconds());
  }

  /** Round by round over all scenarios, so that a run cut short has something of each. */
  private static int run(Campaigns campaigns, int few)
      throws InterruptedException, ExecutionException {
    ExecutorService workers = Executors.newFixedThreadPool(CORES);
    List<Future<?>> running = new ArrayList<>();
    for (int round = 0; round < few; round++) {
      for (Scenario scenario : all()) {
        int last = FIRST_SHOP + shops(scenario, round + 1);
        for (int number = FIRST_SHOP + shops(scenario, round); number < last; number++) {
          for (Manner manner : Manner.values()) {
            if (!campaigns.has(scenario, number, manner)) {
              int shop = number;
              running.add(workers.submit(() -> run(campaigns, scenario, shop, manner)));
            }
          }
        }
      }
    }
    try {
      for (Future<?> each : running) {
        each.get();
      }
    } finally {
      workers.shutdownNow();
    }
    return running.size();
  }

  private static Void run(Campaigns campaigns, Scenario scenario, int number, Manner manner)
      throws IOException {
    campaigns.add(scenario, number, manner, Campaign.run(scenario, number, manner));
    return null;
  }
}
