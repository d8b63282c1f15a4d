package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Main;
import charline.fault.FaultFiles;
import charline.log.Filter;
import charline.log.Logbook;
import charline.web.pages.PageOptions;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/** The whole job in a browser: what to burn next, files in and out, and every page for everyone. */
class JobJourneyTest {
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";

  @TempDir static Path samples;
  @TempDir Path folder;

  private static Browser tablet;

  @BeforeAll
  static void import_the_trials_of_the_boathouse() throws IOException {
    tablet = Browser.open(false);
    charline(
        samples.resolve("boathouse.db"),
        "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv --power-checks"
            + " sample-trials/power-checks.csv");
  }

  private static void charline(Path file, String line) {
    int code =
        Main.run(
            ("--log " + file + " " + line).split(" "),
            new ByteArrayInputStream(new byte[0]),
            new PrintStream(PrintStream.nullOutputStream()),
            System.err,
            Map.of(),
            Clock.systemDefaultZone());
    assertThat(code).as(line).isZero();
  }

  private void charline(String line) {
    charline(file(), line);
  }

  @AfterAll
  static void close_the_browser() {
    tablet.close();
  }

  @BeforeEach
  void begin() throws IOException {
    tablet.fresh().size(820, 1180);
    Files.copy(samples.resolve("boathouse.db"), file());
  }

  private Path file() {
    return folder.resolve("boathouse.db");
  }

  @Test
  void a_card_to_burn_fills_the_form_and_its_patch_fulfils_the_plan() {
    try (BenchHere bench = BenchHere.serve(file())) {
      tablet.open(bench.address() + "next" + LATEX);
      tablet.untilSays("main", "Burn this");
      String setting = tablet.text(".job h3");
      tablet.tap(".job button");
      tablet.untilSays("#plan-words", "Plan P-0001: ");
      assertThat(tablet.text("#plan-words")).contains(setting.replaceFirst("^1\\s+", ""));
      tablet.tap("input[value=clean]");
      tablet.tap("#keep");
      tablet.untilSays("#kept-code", "P-0001");
      try (Logbook log = Logbook.openExisting(file(), Clock.systemDefaultZone())) {
        assertThat(log.planned().open()).isEmpty();
        assertThat(log.patch("P-0001").patch().lastReading().outcome().text()).isEqualTo("clean");
      }
      tablet.tap("#next");
      tablet.tap("input[value=residue]");
      tablet.tap("#keep");
      tablet.untilSays("#kept-code", "P-0002");
    }
  }

  @Test
  void an_answer_that_is_computed_comes_by_itself_without_a_reload() {
    Clock clock = Clock.systemDefaultZone();
    try (Logbook log = Logbook.open(file(), clock);
        PageServer server =
            PageServer.start(
                log,
                new PageOptions(
                    0,
                    false,
                    "Runa",
                    "test",
                    clock,
                    code -> {},
                    Duration.ZERO,
                    new FaultFiles(folder.resolve("faults"), "test")))) {
      tablet.open(server.address() + "onset" + LATEX);
      tablet.script("window.kept = 'here'");
      assertThat(tablet.text("main")).contains("The answer is being computed.");
      tablet.untilSays("main", "chars a patch on an average board");
      assertThat(tablet.script("return window.kept")).as("no reload").isEqualTo("here");
      assertThat(tablet.all("[data-renewing]")).isEmpty();
    }
  }

  @Test
  void a_sheet_is_chosen_looked_at_and_imported() {
    try (BenchHere bench = BenchHere.serve(file())) {
      tablet.open(bench.address() + "log");
      tablet
          .find("#import [name=trials]")
          .sendKeys(Path.of("sample-trials/varnish-on-ash.csv").toAbsolutePath().toString());
      tablet.tap("#import button");
      tablet.untilSays("h1", "This would be imported");
      assertThat(tablet.text("main")).contains("varnish-on-ash.csv: 26 patches with 110 readings");
      tablet.tap("main form button");
      tablet.untilSays("h1", "Imported");
      try (Logbook log = Logbook.openExisting(file(), Clock.systemDefaultZone())) {
        assertThat(log.patches(Filter.ALL)).hasSize(50);
      }
      tablet.open(bench.address() + "log");
      tablet.tap("#import button");
      tablet.untilSays("#import .trouble", "Choose a file first.");
    }
  }

  private static void find(String list, String words) {
    tablet
        .find(list)
        .findElement(By.xpath("ancestor::div[@class='chooser']/input"))
        .sendKeys(words);
  }

  @Test
  void what_is_in_a_long_list_is_found_by_a_part_of_its_name() {
    try (BenchHere bench = BenchHere.serve(file())) {
      tablet.open(bench.address() + "next");
      tablet.untilSays("main", "Begin with another");
      Object chosen = tablet.script("return document.querySelector('[name=wood]').value");
      find("[name=wood]", "oak");
      assertThat(tablet.all(".fits button"))
          .isNotEmpty()
          .allSatisfy(fit -> assertThat(fit.getText()).contains("oak"));
      assertThat(tablet.script("return document.querySelector('[name=wood]').value"))
          .as("nothing is chosen until it is tapped")
          .isEqualTo(chosen);
      tablet.tap(".fits button");
      assertThat(tablet.script("return document.querySelector('[name=wood]').value"))
          .asString()
          .contains("oak");
      assertThat(tablet.all(".fits button")).isEmpty();
      find("[name=wood]", "no such wood");
      tablet.untilSays(".chooser", "None of ");
    }
  }

  @Test
  void record_finds_one_of_many_boards_and_the_next_patch_stays_on_it() {
    for (int i = 1; i <= 20; i++) {
      charline("board add sill-" + i + " --wood pine");
    }
    try (BenchHere bench = BenchHere.serve(file())) {
      tablet.open(bench.address() + "record?like=LP-01");
      tablet.untilSays("#live", "may char");
      tablet.tap("#place summary");
      find("#c-board", "sill-17");
      tablet.press("\n");
      tablet.untilSays("#place-board", "sill-17");
      tablet.tap("input[value=residue]");
      tablet.tap("#keep");
      tablet.untilSays("#kept-code", "P-0001");
      tablet.tap("#further");
      assertThat(tablet.all("#place .chooser input")).allMatch(field -> !field.isEnabled());
      tablet.open(bench.address() + "record");
      tablet.untilSays("#place-board", "sill-17");
      try (Logbook log = Logbook.openExisting(file(), Clock.systemDefaultZone())) {
        assertThat(log.patch("P-0001").patch().board().name()).isEqualTo("sill-17");
      }
    }
  }

  private static Map<String, String> pages(String board) {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("next", "next" + LATEX);
    pages.put("next-choose", "next");
    pages.put("plans", "plans");
    pages.put("onset", "onset" + LATEX);
    pages.put("removal", "removal" + LATEX);
    pages.put("ask", "ask?q=&outcome=char");
    pages.put("ask-empty", "ask?q=&family=latex&outcome=tint");
    pages.put("boards", "boards?q=panel");
    pages.put("board", "board?of=" + board);
    pages.put("recent", "recent");
    pages.put("rig", "rig?of=heron");
    pages.put("amend", "patch/LP-01/amend");
    pages.put("log", "log");
    pages.put("check", "log/check");
    pages.put("preview", "sheet/preview" + LATEX);
    return pages;
  }

  @Test
  void every_page_of_the_job_can_be_read_and_used_by_anyone() throws IOException {
    String board;
    try (Logbook log = Logbook.openExisting(file(), Clock.systemDefaultZone())) {
      board = log.boards().get(0).name().replace(" ", "%20");
    }
    SoftAssertions all = new SoftAssertions();
    Path shots = Files.createDirectories(Path.of("target", "bench"));
    try (BenchHere bench = BenchHere.serve(file());
        Browser night = Browser.open(true)) {
      tablet.open(bench.address() + "next" + LATEX);
      tablet.tap("[name=print] , form[action*=reserve] button");
      for (boolean dark : new boolean[] {false, true}) {
        Browser browser = dark ? night : tablet;
        int width = dark ? 820 : 390;
        browser.size(width, dark ? 1180 : 844);
        for (Map.Entry<String, String> page : pages(board).entrySet()) {
          String what = "%s, %d px, %s".formatted(page.getKey(), width, dark ? "dark" : "light");
          browser.open(bench.address() + page.getValue());
          browser.script("document.querySelectorAll('details').forEach(d => d.open = true)");
          all.assertThat(Accessible.violations(browser)).as(what).isEmpty();
          all.assertThat(Accessible.small(browser)).as("targets, " + what).isEmpty();
          all.assertThat(browser.script("return document.documentElement.scrollWidth"))
              .as(what)
              .isEqualTo((long) width);
          all.assertThat(browser.complaints()).as(what).isEmpty();
          browser.wholePicture(
              shots.resolve("job-%s-%d.png".formatted(page.getKey(), width)), width);
        }
      }
    }
    all.assertAll();
  }
}
