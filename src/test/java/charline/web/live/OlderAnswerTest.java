package charline.web.live;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Main;
import charline.fault.FaultFiles;
import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Stratum;
import charline.web.pages.AllPages;
import charline.web.pages.PageOptions;
import charline.web.security.AccessFilter;
import charline.window.LiveForecast;
import io.javalin.Javalin;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window's page and sheet while a fit takes longer than a person waits. */
class OlderAnswerTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-20T09:00:00Z"), ZoneOffset.UTC);

  /** Bounds a test that has failed; nothing is told from it. */
  private static final Duration LONG = Duration.ofMinutes(2);

  private static final String LATEX = "?family=latex&wood=pine";

  @TempDir Path folder;

  private final HttpClient client = HttpClient.newHttpClient();
  private final CountDownLatch go = new CountDownLatch(1);
  private final AtomicBoolean begun = new AtomicBoolean();
  private Path file;
  private Logbook log;
  private LiveModels models;
  private LiveAnswers answers;
  private Javalin javalin;

  @BeforeEach
  void serve() {
    file = folder.resolve("boathouse.db");
    charline(
        "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv --power-checks"
            + " sample-trials/power-checks.csv");
    log = Logbook.open(file, CLOCK);
    models = new LiveModels(log, this::fit);
    AccessFilter door = new AccessFilter(false, CLOCK, code -> {}, folder.resolve("devices"));
    answers = new LiveAnswers(models, CLOCK);
    AllPages pages =
        new AllPages(
            log,
            models,
            answers,
            door,
            new PageOptions(
                0,
                false,
                "Runa",
                "test",
                CLOCK,
                code -> {},
                Duration.ofMillis(20),
                new FaultFiles(folder.resolve("faults"), "test")));
    javalin =
        Javalin.create(
                config -> {
                  config.startup.showJavalinBanner = false;
                  config.startup.showOldJavalinVersionWarning = false;
                  config.startup.startupWatcherEnabled = false;
                  config.routes.before(door::check);
                  pages.add(config.routes);
                })
            .start("127.0.0.1", 0);
    door.opened(javalin.port());

    LogSnapshot shelf = models.shelf();
    Stratum stratum = shelf.strata().keySet().iterator().next();
    LiveForecast first = models.of(stratum, false, LONG).models().orElseThrow();
    assertThat(models.validity(first, shelf.rig("heron").orElseThrow(), LONG)).isPresent();
  }

  @AfterEach
  void close() {
    go.countDown();
    javalin.stop();
    answers.close();
    models.close();
    log.close();
  }

  /** The first fit is as quick as it is, each later one waits. */
  private LiveForecast fit(Fitter fitter, Trials trials) {
    if (begun.getAndSet(true)) {
      try {
        assertThat(go.await(LONG.toSeconds(), TimeUnit.SECONDS)).isTrue();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
    return LiveForecast.fitted(fitter, trials);
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

  private String page(String path) throws IOException, InterruptedException {
    var answer =
        client.send(
            HttpRequest.newBuilder(
                    URI.create("http://127.0.0.1:" + javalin.port() + "/" + path + LATEX))
                .build(),
            BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return answer.body();
  }

  /** A page looks again until its answer is there, as its script does. */
  private String newest(String path) throws IOException, InterruptedException {
    long end = System.nanoTime() + LONG.toNanos();
    String page = page(path);
    while (page.contains("data-renewing") && System.nanoTime() < end) {
      Thread.sleep(50);
      page = page(path);
    }
    return page;
  }

  @Test
  void an_older_answer_says_what_it_does_not_hold_yet_and_a_newer_one_does_not() throws Exception {
    assertThat(page("window")).contains("The answer is being computed.");
    assertThat(newest("window")).contains("Start setting").doesNotContain("being computed");

    charline("patch add --like LP-01 --outcome residue");
    charline("patch read P-0001 --passes 9 --outcome residue");
    charline("patch read LP-01 --passes 9 --outcome char");
    charline("patch void LP-02 --why dropped");
    String line =
        "Not in this answer yet: P-0001; as they were before: LP-01; still in it: LP-02. A newer"
            + " answer is being computed.";
    assertThat(page("window")).containsOnlyOnce(line).contains("Look again");
    assertThat(page("sheet")).containsOnlyOnce(line);

    go.countDown();
    Stratum stratum = models.shelf().strata().keySet().iterator().next();
    LiveForecast newer = models.of(stratum, false, LONG).models().orElseThrow();
    models.validity(newer, models.shelf().rig("heron").orElseThrow(), LONG);
    assertThat(newest("window")).doesNotContain("being computed", "Look again");
    assertThat(page("sheet")).doesNotContain("being computed");
  }

  @Test
  void of_many_patches_some_are_named_and_the_others_counted() throws Exception {
    assertThat(newest("window")).contains("Start setting");
    for (int i = 0; i < 6; i++) {
      charline("patch add --like LP-01 --outcome residue");
    }
    assertThat(page("window"))
        .contains("Not in this answer yet: P-0001, P-0002, P-0003, P-0004 and 2 others. A newer");
  }
}
