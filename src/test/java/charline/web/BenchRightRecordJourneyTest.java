package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Nothing on the page leads to a wrong record: whose place it is, how many passes, what was kept.
 */
class BenchRightRecordJourneyTest extends BenchVisit {
  @Test
  void each_device_keeps_its_own_board_power_and_passes() throws IOException {
    try (Browser tablet = Browser.open(false).size(820, 1180)) {
      tablet.open(bench.address() + "record?like=LP-01");
      choose(tablet, "#c-board", "wall panel offcut 2");
      tablet.type("#k-power", "30");
      assertThat(keep(tablet, "residue")).isEqualTo("P-0001");

      browser.open(bench.address() + "record?like=LP-01");
      choose(browser, "#c-board", "wall panel offcut 3");
      browser.type("#k-power", "60");
      browser.tap("#count");
      browser.tap("#count");
      assertThat(keep(browser, "char")).isEqualTo("P-0002");

      tablet.open(bench.address() + "ask");
      tablet.open(bench.address() + "record");
      tablet.tap("#next");
      assertThat(value(tablet, "#c-board")).isEqualTo("wall panel offcut 2");
      assertThat(value(tablet, "#k-power")).isEqualTo("30");
      assertThat(value(tablet, "#k-passes")).isEqualTo("1");
      tablet.open("about:blank"); // as a new visit on another day
      tablet.open(bench.address() + "record");
      assertThat(value(tablet, "#c-board")).isEqualTo("wall panel offcut 2");
      assertThat(value(tablet, "#k-power")).isEqualTo("30");
    }
  }

  @Test
  void a_place_that_the_log_no_longer_has_is_named() {
    browser.open(bench.address() + "record");
    browser.script(
        "localStorage.setItem('bench.place', JSON.stringify({rig: 'heron', board: 'door B',"
            + " finish: 'wall panel latex', power: '30'}))");
    browser.open(bench.address() + "record");
    browser.untilSays("#trouble", "This device was at board door B, which the log no longer has.");
    assertThat(browser.find("#c-board").isDisplayed()).isTrue();
  }

  @Test
  void a_patch_begins_at_one_pass_whatever_the_last_one_took() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.tap("#count");
    browser.tap("#count");
    assertThat(value("#k-passes")).isEqualTo("2");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.open(bench.address() + "record?like=P-0001");
    assertThat(value("#k-passes")).isEqualTo("1");
    assertThat(keep(browser, "clean")).isEqualTo("P-0002");
    browser.tap("#next");
    assertThat(value("#k-passes")).isEqualTo("1");
    assertThat(keep(browser, "clean")).isEqualTo("P-0003");
    assertThat(patch("P-0003").patch().lastReading().passes()).isEqualTo(1);
    browser.open(bench.address() + "record?like=LP-01&power=80&pace=30&passes=3");
    assertThat(value("#k-passes")).isEqualTo("3");
  }

  @Test
  void a_reload_shows_what_was_kept_whatever_led_to_record() {
    for (String link : List.of("record?like=LP-02", "record?reading=LP-02", "record")) {
      browser.open(bench.address() + link);
      String kept = keep(browser, "clean");
      browser.reload();
      browser.untilSays("#title", "Kept in the log");
      assertThat(browser.text("#kept-code")).as(link).isEqualTo(kept);
      assertThat(browser.find("#record").isDisplayed()).as(link).isFalse();
      browser.tap("#next");
    }
    assertThat(patch("LP-02").patch().readings()).hasSizeGreaterThan(1);
  }

  @Test
  void a_patch_left_by_a_dead_battery_is_offered_with_its_photo() throws IOException {
    Path photo = folder.resolve("patch.png");
    browser.open(bench.address());
    browser.picture(photo);
    browser.open(bench.address() + "record?like=LP-01");
    browser.type("#k-power", "47");
    browser.tap("input[value=char]");
    browser.unfold("seen-more");
    browser.type("#note", "north gable");
    browser.find("#photo").sendKeys(photo.toString());
    browser.until(
        "the photo on this device", () -> browser.find("#photo-shown").isDisplayed() ? true : null);

    String dead = browser.driver().getWindowHandle();
    browser.newTab(); // a new page knows nothing of the one that died
    String alive = browser.driver().getWindowHandle();
    browser.open(bench.address() + "record");
    browser.until("no offer", () -> browser.find("#offer").isDisplayed() ? null : true);
    browser.driver().switchTo().window(dead).close();
    browser.driver().switchTo().window(alive);
    browser.open(bench.address() + "record");
    browser.untilSays("#offer-words", "char after 1 pass");
    assertThat(browser.text("#offer-words")).contains("power 47", "north gable", "with a photo");
    browser.tap("#offer-take");
    assertThat(value("#k-power")).isEqualTo("47");
    assertThat(browser.find("input[value=char]").isSelected()).isTrue();
    browser.until("the photo", () -> browser.find("#photo-shown").isDisplayed() ? true : null);
    browser.tap("#keep");
    browser.untilSays("#kept-words", "with a photo");
    browser.until("the photo in the log", () -> photosOf("P-0001") == 1 ? true : null);
    browser.open(bench.address() + "record");
    browser.tap("#next");
    assertThat(browser.find("#offer").isDisplayed()).isFalse();
  }

  @Test
  void a_link_with_settings_puts_what_was_half_way_aside_and_offers_it() {
    browser.open(bench.address() + "record?like=LP-02");
    browser.type("#k-power", "47");
    browser.tap("input[value=tint]");
    browser.open(bench.address() + "record?like=LP-01&power=33&pace=21");
    assertThat(value("#k-power")).isEqualTo("33");
    browser.untilSays("#offer-words", "tint after 1 pass");
    browser.tap("#offer-leave");
    browser.until("no offer", () -> browser.find("#offer").isDisplayed() ? null : true);
  }

  @Test
  void a_paired_device_records_under_its_own_name() throws IOException {
    bench.close();
    bench = BenchHere.shared(file);
    String name =
        java.net.InetAddress.getLocalHost().getHostName().toLowerCase(java.util.Locale.ROOT);
    String shared = "http://" + name + ":" + bench.port() + "/";
    try (Browser other = Browser.open(false, name).size(390, 844)) {
      other.open(shared + "record");
      other.type("[name=code]", bench.code());
      other.type("[name=name]", "anna phone");
      other.tap("button.main");
      other.untilSays("h1", "At the bench");
      other.open(shared + "record?like=LP-01");
      assertThat(value(other, "#by")).isEqualTo("anna phone");
      assertThat(keep(other, "residue")).isEqualTo("P-0001");
      assertThat(patch("P-0001").by()).contains("anna phone");
      other.tap("#further");
      other.type("#by", "");
      assertThat(keep(other, "clean")).isEqualTo("P-0001");
      other.until(
          "the reading", () -> patch("P-0001").patch().readings().size() == 2 ? true : null);
      assertThat(patch("P-0001").patch().lastReading().by()).contains("anna phone");
    }
  }

  @Test
  void the_step_buttons_stop_at_the_ends_and_say_so() {
    browser.open(bench.address() + "record");
    browser.type("#k-power", "98");
    browser.tap("[data-for=k-power][data-step='5']");
    assertThat(value("#k-power")).isEqualTo("100");
    assertThat(browser.text("[data-row=power] label")).contains("the most");
    Object height =
        browser.script("return document.querySelector('[data-row=power]').offsetHeight");
    browser.tap("[data-for=k-power][data-step='5']");
    assertThat(value("#k-power")).isEqualTo("100");
    browser.type("#k-power", "5");
    browser.tap("[data-for=k-power][data-step='-5']");
    assertThat(value("#k-power")).isEqualTo("5");
    assertThat(browser.text("[data-row=power] label")).contains("less: tap the number");
    assertThat(browser.script("return document.querySelector('[data-row=power]').offsetHeight"))
        .isEqualTo(height);
    browser.tap("#uncount");
    assertThat(value("#k-passes")).isEqualTo("1");
  }

  @Test
  void nothing_moves_under_the_finger_when_the_risk_changes() {
    browser.open(bench.address() + "record?like=LP-01&power=80&pace=30");
    browser.untilSays("#live", "Safe for the wood");
    Object before = placeOfTheKnobs();
    browser.type("#k-hand", "60");
    browser.untilSays("#live", "Not tried");
    assertThat(placeOfTheKnobs()).isEqualTo(before);
    browser.type("#k-hand", "14");
    browser.untilSays("#live", "Hot");
    assertThat(placeOfTheKnobs()).isEqualTo(before);
    browser.connection(false);
    browser.type("#k-hand", "15");
    browser.untilSays("#live", "No connection");
    assertThat(placeOfTheKnobs()).isEqualTo(before);
  }

  private static Object placeOfTheKnobs() {
    return browser.script(
        "return ['#k-power', '#k-hand', '#count', 'input[value=char]', '#keep'].map(c =>"
            + " document.querySelector(c).getBoundingClientRect().top).join()");
  }
}
