package charline.benchmarks;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.fault.FaultFiles;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.WoodForm;
import charline.web.PageServer;
import charline.web.pages.PageOptions;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * How long the bench page takes to tell the risk of a changed setting, over HTTP and as the page
 * asks it: with 30 and with 3,000 invented patches in the stratum. Run {@code main}; it prints a
 * table.
 */
public final class LiveRiskBenchmark {
  private static final int CHANGES = 300;

  private LiveRiskBenchmark() {}

  /** Prints the table. */
  public static void main(String[] args) throws Exception {
    System.out.println("A settings change on the bench page, milliseconds");
    System.out.println(
        "patches  first answer  median  95 %  slowest  | refit after a new patch: answer at once "
            + " new models after");
    for (int patches : new int[] {30, 3000}) {
      Path folder = Files.createTempDirectory("live-risk");
      try (Logbook log = Logbook.open(folder.resolve("log.db"), Clock.systemDefaultZone())) {
        burn(log, patches);
        measure(log, patches);
      }
    }
  }

  private static void measure(Logbook log, int patches) throws Exception {
    PageOptions options =
        new PageOptions(
            0,
            false,
            "Runa",
            "benchmark",
            Clock.systemDefaultZone(),
            code -> {},
            PageOptions.PATIENCE,
            new FaultFiles(Path.of("target"), "benchmark"));
    try (PageServer server = PageServer.start(log, options)) {
      HttpClient client = HttpClient.newHttpClient();
      long start = System.nanoTime();
      waitForModels(client, server);
      double first = milliseconds(start);
      double[] taken = new double[CHANGES];
      for (int i = -50; i < CHANGES; i++) {
        start = System.nanoTime();
        ask(client, server, 40 + Math.floorMod(i, 40));
        if (i >= 0) {
          taken[i] = milliseconds(start);
        }
      }
      Arrays.sort(taken);
      burn(log, 1);
      start = System.nanoTime();
      ask(client, server, 50);
      double atOnce = milliseconds(start);
      waitForModels(client, server);
      System.out.printf(
          Locale.ROOT,
          "%7d  %12.0f  %6.1f  %4.1f  %7.1f  | %39.0f  %16.0f%n",
          patches,
          first,
          taken[CHANGES / 2],
          taken[CHANGES * 95 / 100],
          taken[CHANGES - 1],
          atOnce,
          milliseconds(start));
    }
  }

  private static void waitForModels(HttpClient client, PageServer server) throws Exception {
    while (!ask(client, server, 50).contains("\"renewing\":false")) {
      Thread.sleep(5);
    }
  }

  private static String ask(HttpClient client, PageServer server, int power)
      throws IOException, InterruptedException {
    URI uri =
        URI.create(
            server.address()
                + "live?rig=heron&board=offcut-0&finish=latex&form=hand&hand=18&width=60&spot=0.5&rep=60&passes=2&power="
                + power);
    return client
        .send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString())
        .body();
  }

  private static double milliseconds(long start) {
    return (System.nanoTime() - start) / 1e6;
  }

  /** Invented patches that char above about 25 and clear above about 9 J/cm² in all. */
  private static void burn(Logbook log, int count) {
    if (log.rigs().isEmpty()) {
      OptionalDouble none = OptionalDouble.empty();
      log.add(
          RigBuilder.heron(log.newId())
              .named("heron")
              .ratedWatts(300)
              .spotMillimetres(0.5)
              .repetitionKilohertz(60)
              .pulseNanoseconds(none)
              .build(),
          "Runa");
      for (int i = 0; i < 5; i++) {
        log.add(
            new Board(
                log.newId(),
                "offcut-" + i,
                "pine",
                WoodForm.SOLID,
                Optional.empty(),
                none,
                Optional.empty()),
            "Runa");
      }
      log.add(new Finish(log.newId(), "latex", "latex", List.of()), "Runa");
    }
    Random random = new Random(count);
    List<Board> boards = new ArrayList<>(log.boards());
    Rig rig = log.rig("heron");
    Finish finish = log.finish("latex");
    log.inTransaction(
        () -> {
          for (int i = 0; i < count; i++) {
            double power = 30 + random.nextInt(70);
            double hand = 10 + random.nextInt(30);
            double dose = 3 * power * 100 / (60 * hand) * Math.exp(0.25 * random.nextGaussian());
            List<Mark> marks = new ArrayList<>();
            if (dose > 25) {
              marks.add(Mark.CHAR);
            }
            if (dose < 9) {
              marks.add(Mark.RESIDUE);
            }
            Outcome outcome =
                marks.isEmpty()
                    ? Outcome.of(Mark.CLEAN)
                    : Outcome.of(marks.get(0), marks.toArray(Mark[]::new));
            OffsetDateTime at = OffsetDateTime.parse("2026-11-02T09:00:00Z");
            Reading reading =
                new Reading(
                    log.newId(),
                    1 + random.nextInt(3),
                    outcome,
                    Optional.empty(),
                    OptionalDouble.empty(),
                    at,
                    Optional.empty(),
                    Optional.empty());
            Settings settings =
                new Settings(
                    PowerSetting.percent(power),
                    new HandPass(60, hand),
                    new Spot(0.5, SpotDefinition.ONE_OVER_E_SQUARED),
                    Optional.of(new Pulses(60, OptionalDouble.empty())));
            log.add(
                new PatchEntry(
                    new Patch(
                        log.newId(),
                        log.nextPatchCode(),
                        at,
                        rig,
                        boards.get(i % boards.size()),
                        finish,
                        settings,
                        OptionalDouble.empty(),
                        List.of(reading)),
                    Map.of(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty()));
          }
          return null;
        });
  }
}
