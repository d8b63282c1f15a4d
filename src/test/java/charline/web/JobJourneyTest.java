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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** The whole job in a browser: what to burn next, files in and out, and long lists. */
class JobJourneyTest extends BenchVisit {
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";

  @BeforeEach
  void take_a_tablet() {
    phone.size(820, 1180);
  }

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
    phone.open(bench.address() + "next" + LATEX);
    phone.untilSays("main", "Burn this");
    String setting = phone.text(".job h3");
    phone.tap(".job button");
    phone.untilSays("#plan-words", "Plan P-0001: ");
    assertThat(phone.text("#plan-words")).contains(setting.replaceFirst("^1\\s+", ""));
    phone.tap("input[value=clean]");
    phone.tap("#keep");
    phone.untilSays("#kept-code", "P-0001");
    try (Logbook log = Logbook.openExisting(file, Clock.systemDefaultZone())) {
      assertThat(log.planned().open()).isEmpty();
      assertThat(log.patch("P-0001").patch().lastReading().outcome().text()).isEqualTo("clean");
    }
    phone.tap("#next");
    phone.tap("input[value=residue]");
    phone.tap("#keep");
    phone.untilSays("#kept-code", "P-0002");
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
      phone.open(server.address() + "onset" + LATEX);
      phone.script("window.kept = 'here'");
      assertThat(phone.text("main")).contains("The answer is being computed.");
      phone.untilSays("main", "chars a patch on an average board");
      assertThat(phone.script("return window.kept")).as("no reload").isEqualTo("here");
      assertThat(phone.all("[data-renewing]")).isEmpty();
    }
  }

  @Test
  void a_sheet_is_chosen_looked_at_and_imported() {
    phone.open(bench.address() + "log");
    phone
        .find("#import [name=trials]")
        .sendKeys(Path.of("sample-trials/varnish-on-ash.csv").toAbsolutePath().toString());
    phone.tap("#import button");
    phone.untilSays("h1", "This would be imported");
    assertThat(phone.text("main")).contains("varnish-on-ash.csv: 26 patches with 110 readings");
    phone.tap("main form button");
    phone.untilSays("h1", "Imported");
    try (Logbook log = Logbook.openExisting(file, Clock.systemDefaultZone())) {
      assertThat(log.patches(Filter.ALL)).hasSize(50);
    }
    phone.open(bench.address() + "log");
    phone.tap("#import button");
    phone.untilSays("#import .trouble", "Choose a file first.");
  }

  private static void find(String list, String words) {
    phone.find(list).findElement(By.xpath("ancestor::div[@class='chooser']/input")).sendKeys(words);
  }

  @Test
  void what_is_in_a_long_list_is_found_by_a_part_of_its_name() {
    phone.open(bench.address() + "next");
    phone.untilSays("main", "Begin with another");
    Object chosen = phone.script("return document.querySelector('[name=wood]').value");
    find("[name=wood]", "oak");
    assertThat(phone.all(".fits button"))
        .isNotEmpty()
        .allSatisfy(fit -> assertThat(fit.getText()).contains("oak"));
    assertThat(phone.script("return document.querySelector('[name=wood]').value"))
        .as("nothing is chosen until it is tapped")
        .isEqualTo(chosen);
    phone.tap(".fits button");
    assertThat(phone.script("return document.querySelector('[name=wood]').value"))
        .asString()
        .contains("oak");
    assertThat(phone.all(".fits button")).isEmpty();
    find("[name=wood]", "no such wood");
    phone.untilSays(".chooser", "None of ");
  }

  @Test
  void record_finds_one_of_many_boards_and_the_next_patch_stays_on_it() {
    for (int i = 1; i <= 20; i++) {
      charline("board add sill-" + i + " --wood pine");
    }
    phone.open(bench.address() + "record?like=LP-01");
    phone.untilSays("#live", "may char");
    phone.tap("#place summary");
    find("#c-board", "sill-17");
    phone.press("\n");
    phone.untilSays("#place-board", "sill-17");
    phone.tap("input[value=residue]");
    phone.tap("#keep");
    phone.untilSays("#kept-code", "P-0001");
    phone.tap("#further");
    assertThat(phone.all("#place .chooser input")).allMatch(field -> !field.isEnabled());
    phone.open(bench.address() + "record");
    phone.untilSays("#place-board", "sill-17");
    try (Logbook log = Logbook.openExisting(file, Clock.systemDefaultZone())) {
      assertThat(log.patch("P-0001").patch().board().name()).isEqualTo("sill-17");
    }
  }
}
