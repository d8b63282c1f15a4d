package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.WebElement;

/** What the log refuses or doubts is met, put right and sent, with a connection and without. */
class BenchDoubtsJourneyTest extends TabletVisit {
  @Test
  void plain_limits_are_checked_before_an_entry_waits_on_the_device() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.connection(false);
    browser.tap("input[value=tint]");
    browser.type("#k-power", "140");
    browser.tap("#keep");
    browser.untilSays("#trouble", "Power must be between 0 and 100 %, not 140 %.");
    browser.type("#k-power", "40");
    browser.type("#k-hand", "-3");
    browser.tap("#keep");
    browser.untilSays("#trouble", "Hand speed must be above 0 mm/s, not -3 mm/s.");
    browser.type("#k-hand", "quick");
    browser.tap("#keep");
    browser.untilSays("#trouble", "Hand speed must be a number in mm/s, not \"quick\".");
    browser.type("#k-hand", "");
    browser.tap("#keep");
    browser.untilSays("#trouble", "Hand speed is not set; give it in mm/s.");
    browser.type("#k-hand", "12,5");
    browser.type("#k-passes", "0");
    browser.tap("#keep");
    browser.untilSays("#trouble", "Passes must be a whole number, 1 or more, not \"0\".");
    assertThat(browser.module("queue.js", "m.queue().length")).isEqualTo(0L);
    browser.type("#k-passes", "1");
    browser.tap("#keep");
    assertThat(kept()).matches("W-[0-9A-Z]{4}");
    browser.untilSays("#link", "1 entry waiting");
  }

  @Test
  void an_entry_that_the_log_refused_is_corrected_under_its_own_code() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.connection(false);
    browser.type("#k-power", "55");
    browser.type("#k-hand", "12mph"); // only the bench knows all units
    browser.tap("#count");
    browser.tap("#count");
    browser.tap("input[value=char]");
    browser.tap("input[value=residue]");
    browser.unfold("seen-more");
    browser.type("#note", "north gable");
    browser.tap("#keep");
    String code = kept();
    browser.tap("#next");
    browser.type("#k-power", "61"); // the next patch is half-way when the refusal comes
    browser.type("#k-hand", "20");
    browser.connection(true);
    browser.module("sending.js", "void m.flush()");
    browser.untilSays("#link", "1 entry needs you");
    browser.untilSays("#queue-list", "A speed must be in");
    assertThat(browser.text("#queue-list")).contains(code, "55 %", "hand speed 12mph");
    browser.tapText("Correct it");
    assertThat(browser.text("#title")).isEqualTo("Correct " + code);
    browser.untilSays("#reading-of", "A speed must be in");
    assertThat(value("#k-power")).isEqualTo("55");
    assertThat(value("#k-hand")).isEqualTo("12mph");
    assertThat(value("#k-passes")).isEqualTo("2");
    assertThat(browser.find("input[value=char]").isSelected()).isTrue();
    assertThat(browser.find("input[value=residue]").isSelected()).isTrue();
    assertThat(value("#note")).isEqualTo("north gable");

    browser.open(bench.address() + "window"); // a correction too may be left half-way
    browser.open(bench.address() + "record");
    assertThat(browser.text("#title")).isEqualTo("Correct " + code);
    browser.type("#k-hand", "12mpg");
    browser.tap("#keep");
    browser.untilSays("#trouble", "not \"12mpg\"");
    browser.type("#k-hand", "12");
    browser.tap("#keep");
    browser.untilSays("#title", "Kept in the log");
    assertThat(browser.text("#kept-code")).isEqualTo(code);
    browser.until("nothing waiting", () -> browser.text("#link").isEmpty() ? true : null);
    assertThat(recorded())
        .singleElement()
        .satisfies(
            e -> {
              assertThat(e.patch().code()).isEqualTo(code);
              assertThat(e.patch().lastReading().outcome().text()).isEqualTo("char+residue");
              assertThat(e.typed()).containsEntry("hand", "12mm/s");
            });
    browser.tap("#next");
    assertThat(browser.text("#title")).isEqualTo("Record a patch");
    assertThat(value("#k-power")).isEqualTo("61");
  }

  @Test
  void a_reading_that_the_log_refused_is_corrected_as_a_reading() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "char")).isEqualTo("P-0001");
    browser.connection(false);
    browser.tap("#further");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#title", "Kept on this device");
    browser.connection(true);
    browser.module("sending.js", "void m.flush()");
    browser.untilSays("#queue-list", "cannot be gone");
    browser.tapText("Correct it");
    assertThat(browser.text("#title")).isEqualTo("Correct the reading on P-0001");
    assertThat(browser.find("#k-power").isEnabled()).isFalse();
    assertThat(value("#k-passes")).isEqualTo("2");
    browser.tap("input[value=char]");
    browser.tap("#keep");
    browser.untilSays("#title", "Kept in the log");
    assertThat(patch("P-0001").patch().readings())
        .extracting(r -> r.outcome().text())
        .containsExactly("char", "char");
  }

  @Test
  void an_entry_that_is_doubted_later_no_longer_says_that_it_will_be_sent() throws IOException {
    Path noPhoto = Files.writeString(folder.resolve("patch.jpg"), "no picture");
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.connection(false);
    browser.type("#k-power", "0.6");
    browser.unfold("seen-more");
    browser.find("#photo").sendKeys(noPhoto.toString());
    String code = keep(browser, "clean");
    browser.untilSays("#kept-words", "waits on this device until the bench can be reached");
    browser.connection(true);
    browser.module("sending.js", "void m.flush()");
    browser.untilSays("#queue-list", "Power of 0.6 can mean 60 % or 0.6 %");
    assertThat(browser.text("#kept-words"))
        .isEqualTo(
            "clean after 1 pass, with a photo. It is not in the log yet: it waits on this device"
                + " and needs you.");
    browser.tapText("I am sure: keep it");
    browser.untilSays("#kept-words", "It is in the log.");
    browser.untilSays("#queue-list", "Photo of " + code + ". A photo must be a JPEG");
    assertThat(patch(code).patch().settings().power().value()).isEqualTo(0.6);
  }

  @Test
  void a_comma_between_thousands_is_asked_about_and_never_taken_for_a_point() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.unfold("lesser");
    browser.tap("input[name=form][value=scan]");
    browser.tap("#k-scan");
    browser.press("1,200\n");
    assertThat(value("#k-scan")).isEqualTo("1,200");
    browser.untilSays("#live", "can be read in two ways");
    browser.connection(false);
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays(
        "#trouble",
        "Scan speed of 1,200 must be written without a comma, which could stand between"
            + " thousands.");
    assertThat(browser.module("queue.js", "m.queue().length")).isEqualTo(0L);
  }

  @Test
  void a_refused_set_up_is_met_by_its_message() {
    browser.size(360, 740);
    for (boolean scripts : new boolean[] {true, false}) {
      browser.scripts(scripts);
      refusedInSight("board", Map.of("name", "sill offcut", "moisture", "150"), scripts);
      refusedInSight("finish", Map.of("name", "sill latex"), scripts);
      refusedInSight("rig", Map.of("name", "heron", "rated", "300"), scripts);
      refusedInSight("check", Map.of("percent", "150", "metered", "100"), scripts);
    }
  }

  private void refusedInSight(String form, Map<String, String> values, boolean scripts) {
    browser.open(bench.address() + "set-up");
    browser.tap("#form-" + form + " summary");
    values.forEach((name, v) -> browser.type("#form-%s [name=%s]".formatted(form, name), v));
    browser.tap("#form-" + form + " button.main");
    WebElement message = browser.until(form + " refused", () -> shown(".trouble"));
    String where = form + (scripts ? "" : " without scripts");
    browser.until("the message in sight, " + where, () -> browser.inSight(message) ? true : null);
    if (scripts) {
      assertThat(browser.driver().switchTo().activeElement()).as(form).isEqualTo(message);
    }
  }

  private WebElement shown(String css) {
    return browser.all(css).stream().filter(WebElement::isDisplayed).findFirst().orElse(null);
  }

  @Test
  void an_entry_made_without_connection_waits_survives_and_is_sent_once() throws IOException {
    serveWithTheJar();
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.connection(false);
    String code = keep(browser, "tint");
    assertThat(code).matches("W-[0-9A-Z]{4}");
    browser.untilSays("#kept-words", "waits on this device");
    browser.untilSays("#link", "1 entry waiting");
    browser.tap("#further");
    browser.untilSays("#live", "No connection");
    browser.tap("input[value=char]");
    browser.tap("#keep");
    browser.untilSays("#link", "2 entries waiting");
    assertThat(recorded()).isEmpty();

    bench = bench.again(); // whose pages have other form tokens now
    browser.connection(true);
    browser.open(bench.address() + "record");
    browser.until("nothing waiting", () -> browser.text("#link").isEmpty() ? true : null);
    assertThat(recorded())
        .singleElement()
        .satisfies(
            e -> {
              assertThat(e.patch().code()).isEqualTo(code);
              assertThat(e.patch().readings())
                  .extracting(r -> r.outcome().text())
                  .containsExactly("tint", "char");
            });
  }

  @Test
  void an_answer_that_was_lost_on_its_way_does_not_record_twice() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.script(
        "const real = window.fetch; let lost = false; window.fetch = async (...a) => {"
            + " const own = document.getElementById('kept-code')?.textContent || '';"
            + " if (lost && !own.startsWith('W-')) throw new TypeError('lost');"
            + " const r = await real(...a);"
            + " if (!lost && String(a[0]).startsWith('/entries')) { lost = true; throw new"
            + " TypeError('lost'); } return r; }");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.until(
        "nothing waiting",
        () ->
            browser.find("#kept-code").isDisplayed() && browser.text("#link").isEmpty()
                ? true
                : null);
    browser.untilSays("#kept-code", "P-0001");
    browser.untilSays("#queue-list", "Change the tape.");
    assertThat(recorded()).hasSize(1);
    browser.tapText("Tape changed");
    browser.until("no reminder", () -> browser.find("#queue").isDisplayed() ? null : true);
  }

  @Test
  void a_doubtful_value_is_kept_only_by_a_person_who_is_sure() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.type("#k-hand", "900");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#trouble", "Hand speed of 900 mm/s is outside 0.5 to 500 mm/s");
    assertThat(recorded()).isEmpty();
    browser.tapText("I am sure: keep it");
    assertThat(kept()).isEqualTo("P-0001");
  }

  @Test
  void a_person_who_is_sure_of_one_value_is_asked_again_when_another_is_changed() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.type("#k-hand", "900");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#keep", "I am sure");
    browser.unfold("seen-more");
    browser.tap("#depth");
    browser.press("9000\n");
    assertThat(browser.text("#keep")).isEqualTo("Keep this patch");
    assertThat(browser.find("#trouble").isDisplayed()).isFalse();
    browser.tap("#keep");
    browser.untilSays("#trouble", "Depth removed of 9000 um");
    browser.type("#depth", "90");
    browser.type("#k-hand", "30");
    assertThat(browser.find("#trouble").isDisplayed()).isFalse();
    browser.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
  }
}
