package charline.web;

import charline.cli.Main;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** The boathouse's trials of latex on pine, served from here to a phone. */
abstract class BenchVisit {
  @TempDir static Path samples;
  @TempDir Path folder;

  static Browser browser;
  Path file;
  ServedBench bench;

  @BeforeAll
  static void import_the_trials() throws IOException {
    browser = Browser.open(false);
    int code =
        Main.run(
            new String[] {
              "--log",
              samples.resolve("boathouse.db").toString(),
              "import",
              "sample-trials/latex-on-pine.csv",
              "--rigs",
              "sample-trials/rigs.csv",
              "--power-checks",
              "sample-trials/power-checks.csv"
            },
            new ByteArrayInputStream(new byte[0]),
            new PrintStream(PrintStream.nullOutputStream()),
            System.err,
            Map.of("CHARLINE_BY", "Runa"),
            Clock.systemDefaultZone());
    if (code != 0) {
      throw new AssertionError("The trials were not imported.");
    }
  }

  @AfterAll
  static void close_the_browser() {
    browser.close();
  }

  @BeforeEach
  void begin() throws IOException {
    browser.fresh().size(390, 844);
    file = folder.resolve("boathouse.db");
    Files.copy(samples.resolve("boathouse.db"), file);
    bench = BenchHere.serve(file);
  }

  @AfterEach
  void end() {
    browser.connection(true);
    bench.close();
  }

  /** The same log served by the built jar, in a process of its own. */
  void serveWithTheJar(String... options) throws IOException {
    bench.close();
    bench = BenchProcess.serve(file, options);
  }

  /** Keeps a patch of an outcome; gives its code. */
  static String keep(Browser device, String outcome) {
    device.tap("input[value=" + outcome + "]");
    device.tap("#keep");
    return kept(device);
  }

  /** The code of the patch that was kept. */
  static String kept() {
    return kept(browser);
  }

  private static String kept(Browser device) {
    return device.until(
        "the code of a patch",
        () -> device.find("#kept-code").isDisplayed() ? device.text("#kept-code") : null);
  }

  static String value(String css) {
    return value(browser, css);
  }

  static String value(Browser device, String css) {
    return device.find(css).getAttribute("value");
  }

  /** Chooses in a list as a person does. */
  static void choose(Browser device, String css, String option) {
    device.script(
        "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('change',"
            + " {bubbles: true}))",
        device.find(css),
        option);
  }

  PatchEntry patch(String code) {
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      return log.patch(code);
    }
  }

  /** What was recorded on the page. */
  List<PatchEntry> recorded() {
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      return new ArrayList<>(
          log.patches(Filter.ALL).stream()
              .filter(e -> e.patch().code().matches("[PW]-.*"))
              .toList());
    }
  }

  int photosOf(String code) {
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      return log.photos(code).size();
    }
  }
}
