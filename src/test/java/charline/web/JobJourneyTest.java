package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Main;
import charline.fault.FaultFiles;
import charline.log.Filter;
import charline.log.Logbook;
import charline.web.pages.PageOptions;
import java.io.ByteArrayInputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** The whole job in a browser: what to burn next, files in and out, and long lists. */
class JobJourneyTest extends TabletVisit {
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";

  private void charline(String line) {
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

  @Test
  void a_card_to_burn_fills_the_form_and_its_patch_fulfils_the_plan() {
    browser.open(bench.address() + "next" + LATEX);
    browser.untilSays("main", "Burn this");
    String setting = browser.text(".job h3");
    browser.tap(".job button");
    browser.untilSays("#plan-words", "Plan P-0001: ");
    assertThat(browser.text("#plan-words")).contains(setting.replaceFirst("^1\\s+", ""));
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0001");
    try (Logbook log = Logbook.openExisting(file, Clock.systemDefaultZone())) {
      assertThat(log.planned().open()).isEmpty();
      assertThat(log.patch("P-0001").patch().lastReading().outcome().text()).isEqualTo("clean");
    }
    browser.tap("#next");
    browser.tap("input[value=residue]");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0002");
  }

  @Test
  void an_answer_that_is_computed_comes_by_itself_without_a_reload() {
    Clock clock = Clock.systemDefaultZone();
    try (Logbook log = Logbook.open(file, clock);
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
      browser.open(server.address() + "onset" + LATEX);
      browser.script("window.kept = 'here'");
      assertThat(browser.text("main")).contains("The answer is being computed.");
      browser.untilSays("main", "chars a patch on an average board");
      assertThat(browser.script("return window.kept")).as("no reload").isEqualTo("here");
      assertThat(browser.all("[data-renewing]")).isEmpty();
    }
  }

  @Test
  void a_sheet_is_chosen_looked_at_and_imported() {
    browser.open(bench.address() + "log");
    browser
        .find("#import [name=trials]")
        .sendKeys(Path.of("sample-trials/varnish-on-ash.csv").toAbsolutePath().toString());
    browser.tap("#import button");
    browser.untilSays("h1", "This would be imported");
    assertThat(browser.text("main")).contains("varnish-on-ash.csv: 26 patches with 110 readings");
    browser.tap("main form button");
    browser.untilSays("h1", "Imported");
    try (Logbook log = Logbook.openExisting(file, Clock.systemDefaultZone())) {
      assertThat(log.patches(Filter.ALL)).hasSize(50);
    }
    browser.open(bench.address() + "log");
    browser.tap("#import button");
    browser.untilSays("#import .trouble", "Choose a file first.");
  }

  private static void find(String list, String words) {
    browser
        .find(list)
        .findElement(By.xpath("ancestor::div[@class='chooser']/input"))
        .sendKeys(words);
  }

  @Test
  void what_is_in_a_long_list_is_found_by_a_part_of_its_name() {
    browser.open(bench.address() + "next");
    browser.untilSays("main", "Begin with another");
    Object chosen = browser.script("return document.querySelector('[name=wood]').value");
    find("[name=wood]", "oak");
    assertThat(browser.all(".fits button"))
        .isNotEmpty()
        .allSatisfy(fit -> assertThat(fit.getText()).contains("oak"));
    assertThat(browser.script("return document.querySelector('[name=wood]').value"))
        .as("nothing is chosen until it is tapped")
        .isEqualTo(chosen);
    browser.tap(".fits button");
    assertThat(browser.script("return document.querySelector('[name=wood]').value"))
        .asString()
        .contains("oak");
    assertThat(browser.all(".fits button")).isEmpty();
    find("[name=wood]", "no such wood");
    browser.untilSays(".chooser", "None of ");
  }

  @Test
  void record_finds_one_of_many_boards_and_the_next_patch_stays_on_it() {
    for (int i = 1; i <= 20; i++) {
      charline("board add sill-" + i + " --wood pine");
    }
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "may char");
    browser.tap("#place summary");
    find("#c-board", "sill-17");
    browser.press("\n");
    browser.untilSays("#place-board", "sill-17");
    browser.tap("input[value=residue]");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0001");
    browser.tap("#further");
    assertThat(browser.all("#place .chooser input")).allMatch(field -> !field.isEnabled());
    browser.open(bench.address() + "record");
    browser.untilSays("#place-board", "sill-17");
    try (Logbook log = Logbook.openExisting(file, Clock.systemDefaultZone())) {
      assertThat(log.patch("P-0001").patch().board().name()).isEqualTo("sill-17");
    }
  }
}
