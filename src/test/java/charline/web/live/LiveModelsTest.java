package charline.web.live;

import static org.assertj.core.api.Assertions.assertThat;

import charline.answer.KeptFits;
import charline.cli.Main;
import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.LiveForecast;
import charline.window.Strokes;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Requests of several devices while the log grows; a fit takes as long as the test says. */
class LiveModelsTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-02T09:00:00Z"), ZoneOffset.UTC);

  /** Bounds a test that has failed; nothing is told from it. */
  private static final Duration LONG = Duration.ofMinutes(2);

  @TempDir Path folder;

  private final CountDownLatch begun = new CountDownLatch(1);
  private final CountDownLatch go = new CountDownLatch(1);
  private final ConcurrentLinkedQueue<Integer> fitted = new ConcurrentLinkedQueue<>();
  private final ExecutorService otherDevice = Executors.newSingleThreadExecutor();
  private Path file;
  private Logbook log;
  private LiveModels models;

  @BeforeEach
  void open() {
    file = folder.resolve("boathouse.db");
    charline("rig add heron --kind pulsed --rated 300W --spot 0.5mm --rep 60kHz --width 60mm");
    charline("board add offcut --wood pine");
    charline("finish add wall-latex --coat latex:pale:90um");
    log = Logbook.open(file, CLOCK);
    models = new LiveModels(log, this::fit);
  }

  @AfterEach
  void close() {
    go.countDown();
    otherDevice.shutdownNow();
    models.close();
    log.close();
  }

  private void charline(String line) {
    PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
    assertThat(
            Main.run(
                ("--log " + file + " " + line).split(" "),
                new ByteArrayInputStream(new byte[0]),
                nowhere,
                System.err,
                Map.of(),
                CLOCK))
        .isZero();
  }

  private void burn() {
    charline(
        "patch add --rig heron --board offcut --finish wall-latex --power 60% --hand 20 --passes 2"
            + " --outcome clean");
  }

  private LiveForecast fit(Fitter fitter, Trials trials) {
    begun.countDown();
    try {
      assertThat(go.await(LONG.toSeconds(), TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    fitted.add(trials.patches().size());
    return LiveForecast.fitted(fitter, trials);
  }

  private Stratum stratum() {
    return models.shelf().strata().keySet().iterator().next();
  }

  private static List<String> codes(LiveModels.Known known) {
    return known.models().orElseThrow().trials().patches().stream().map(Patch::code).toList();
  }

  @Test
  void a_request_that_waits_while_a_patch_is_recorded_gets_the_models_with_that_patch()
      throws Exception {
    burn();
    Stratum stratum = stratum();
    Future<LiveModels.Known> waiting = otherDevice.submit(() -> models.of(stratum, false, LONG));
    assertThat(begun.await(LONG.toSeconds(), TimeUnit.SECONDS)).isTrue();

    burn();
    assertThat(models.of(stratum, false, Duration.ZERO))
        .isEqualTo(new LiveModels.Known(Optional.empty(), true));
    go.countDown();

    LiveModels.Known known = waiting.get(LONG.toSeconds(), TimeUnit.SECONDS);
    assertThat(known.renewing()).isFalse();
    assertThat(codes(known)).containsExactly("P-0001", "P-0002");
  }

  @Test
  void a_request_that_saw_an_older_log_gets_the_newer_models_and_leaves_them_in_place() {
    burn();
    LogSnapshot older = models.shelf();
    burn();
    LogSnapshot newer = models.shelf();
    go.countDown();
    LiveModels.Known known = models.of(newer, stratum(), false, LONG);

    assertThat(codes(models.of(older, stratum(), false, LONG))).containsExactly("P-0001", "P-0002");
    assertThat(models.of(newer, stratum(), false, LONG)).isEqualTo(known);
    assertThat(fitted).containsExactly(2);
  }

  @Test
  void a_patch_taken_back_does_not_make_an_older_log_look_newer() {
    burn();
    LogSnapshot first = models.shelf();
    burn();
    LogSnapshot between = models.shelf();
    charline("patch void P-0002 --why mistyped");
    LogSnapshot last = models.shelf();
    go.countDown();
    LiveModels.Known known = models.of(first, stratum(), false, LONG);

    assertThat(models.of(last, stratum(), false, LONG)).isEqualTo(known);
    assertThat(codes(models.of(between, stratum(), false, LONG))).containsExactly("P-0001");
    assertThat(fitted).containsExactly(1);
  }

  @Test
  void a_page_that_is_started_again_uses_the_fits_of_the_run_before() throws Exception {
    burn();
    burn();
    Path fits = folder.resolve("fits");
    double first = burnRisk(fits);
    FileTime longAgo = FileTime.fromMillis(1_000_000_000_000L);
    List<Path> kept = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(fits)) {
      for (Path each : files) {
        Files.setLastModifiedTime(each, longAgo);
        kept.add(each);
      }
    }
    assertThat(kept).as("one for each event").hasSize(2);
    assertThat(burnRisk(fits)).isEqualTo(first);
    for (Path each : kept) {
      assertThat(Files.getLastModifiedTime(each)).as("was read").isNotEqualTo(longAgo);
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(fits)) {
      assertThat(files).containsExactlyInAnyOrderElementsOf(kept);
    }
  }

  /** Upper bound of the char risk at the setting of the first patch, from a new run of the page. */
  private double burnRisk(Path fits) {
    try (KeptFits kept = KeptFits.in(fits);
        LiveModels again = new LiveModels(log, kept)) {
      LiveForecast known = again.of(stratum(), false, LONG).models().orElseThrow();
      Patch patch = known.trials().patches().get(0);
      return known
          .at(patch.rig(), patch.settings(), patch.exposure(), 2, Strokes.SINGLE, 0.9)
          .charRiskUpper();
    }
  }
}
