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

      phone.open(bench.address() + "record?like=LP-01");
      choose(phone, "#c-board", "wall panel offcut 3");
      phone.type("#k-power", "60");
      phone.tap("#count");
      phone.tap("#count");
      assertThat(keep(phone, "char")).isEqualTo("P-0002");

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
    phone.open(bench.address() + "record");
    phone.script(
        "localStorage.setItem('bench.place', JSON.stringify({rig: 'heron', board: 'door B',"
            + " finish: 'wall panel latex', power: '30'}))");
    phone.open(bench.address() + "record");
    phone.untilSays("#trouble", "This device was at board door B, which the log no longer has.");
    assertThat(phone.find("#c-board").isDisplayed()).isTrue();
  }

  @Test
  void a_patch_begins_at_one_pass_whatever_the_last_one_took() {
    phone.open(bench.address() + "record?like=LP-01");
    phone.tap("#count");
    phone.tap("#count");
    assertThat(value(phone, "#k-passes")).isEqualTo("2");
    assertThat(keep(phone, "residue")).isEqualTo("P-0001");
    phone.open(bench.address() + "record?like=P-0001");
    assertThat(value(phone, "#k-passes")).isEqualTo("1");
    assertThat(keep(phone, "clean")).isEqualTo("P-0002");
    phone.tap("#next");
    assertThat(value(phone, "#k-passes")).isEqualTo("1");
    assertThat(keep(phone, "clean")).isEqualTo("P-0003");
    assertThat(patch("P-0003").patch().lastReading().passes()).isEqualTo(1);
    phone.open(bench.address() + "record?like=LP-01&power=80&pace=30&passes=3");
    assertThat(value(phone, "#k-passes")).isEqualTo("3");
  }

  @Test
  void a_reload_shows_what_was_kept_whatever_led_to_record() {
    for (String link : List.of("record?like=LP-02", "record?reading=LP-02", "record")) {
      phone.open(bench.address() + link);
      String kept = keep(phone, "clean");
      phone.driver().navigate().refresh();
      phone.untilSays("#title", "Kept in the log");
      assertThat(phone.text("#kept-code")).as(link).isEqualTo(kept);
      assertThat(phone.find("#record").isDisplayed()).as(link).isFalse();
      phone.tap("#next");
    }
    assertThat(patch("LP-02").patch().readings()).hasSizeGreaterThan(1);
  }

  @Test
  void a_patch_left_by_a_dead_battery_is_offered_with_its_photo() throws IOException {
    Path photo = folder.resolve("patch.png");
    phone.open(bench.address());
    phone.picture(photo);
    phone.open(bench.address() + "record?like=LP-01");
    phone.type("#k-power", "47");
    phone.tap("input[value=char]");
    phone.unfold("seen-more");
    phone.type("#note", "north gable");
    phone.find("#photo").sendKeys(photo.toString());
    phone.until(
        "the photo on this device", () -> phone.find("#photo-shown").isDisplayed() ? true : null);

    String dead = phone.driver().getWindowHandle();
    phone.newTab(); // a new page knows nothing of the one that died
    String alive = phone.driver().getWindowHandle();
    phone.open(bench.address() + "record");
    phone.until("no offer", () -> phone.find("#offer").isDisplayed() ? null : true);
    phone.driver().switchTo().window(dead).close();
    phone.driver().switchTo().window(alive);
    phone.open(bench.address() + "record");
    phone.untilSays("#offer-words", "char after 1 pass");
    assertThat(phone.text("#offer-words")).contains("power 47", "north gable", "with a photo");
    phone.tap("#offer-take");
    assertThat(value(phone, "#k-power")).isEqualTo("47");
    assertThat(phone.find("input[value=char]").isSelected()).isTrue();
    phone.until("the photo", () -> phone.find("#photo-shown").isDisplayed() ? true : null);
    phone.tap("#keep");
    phone.untilSays("#kept-words", "with a photo");
    phone.until("the photo in the log", () -> photosOf("P-0001") == 1 ? true : null);
    phone.open(bench.address() + "record");
    phone.tap("#next");
    assertThat(phone.find("#offer").isDisplayed()).isFalse();
  }

  @Test
  void a_link_with_settings_puts_what_was_half_way_aside_and_offers_it() {
    phone.open(bench.address() + "record?like=LP-02");
    phone.type("#k-power", "47");
    phone.tap("input[value=tint]");
    phone.open(bench.address() + "record?like=LP-01&power=33&pace=21");
    assertThat(value(phone, "#k-power")).isEqualTo("33");
    phone.untilSays("#offer-words", "tint after 1 pass");
    phone.tap("#offer-leave");
    phone.until("no offer", () -> phone.find("#offer").isDisplayed() ? null : true);
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
    phone.open(bench.address() + "record");
    phone.type("#k-power", "98");
    phone.tap("[data-for=k-power][data-step='5']");
    assertThat(value(phone, "#k-power")).isEqualTo("100");
    assertThat(phone.text("[data-row=power] label")).contains("the most");
    Object height = phone.script("return document.querySelector('[data-row=power]').offsetHeight");
    phone.tap("[data-for=k-power][data-step='5']");
    assertThat(value(phone, "#k-power")).isEqualTo("100");
    phone.type("#k-power", "5");
    phone.tap("[data-for=k-power][data-step='-5']");
    assertThat(value(phone, "#k-power")).isEqualTo("5");
    assertThat(phone.text("[data-row=power] label")).contains("less: tap the number");
    assertThat(phone.script("return document.querySelector('[data-row=power]').offsetHeight"))
        .isEqualTo(height);
    phone.tap("#uncount");
    assertThat(value(phone, "#k-passes")).isEqualTo("1");
  }

  @Test
  void nothing_moves_under_the_finger_when_the_risk_changes() {
    phone.open(bench.address() + "record?like=LP-01&power=80&pace=30");
    phone.untilSays("#live", "Safe for the wood");
    Object before = placeOfTheKnobs();
    phone.type("#k-hand", "60");
    phone.untilSays("#live", "Not tried");
    assertThat(placeOfTheKnobs()).isEqualTo(before);
    phone.type("#k-hand", "14");
    phone.untilSays("#live", "Hot");
    assertThat(placeOfTheKnobs()).isEqualTo(before);
    phone.connection(false);
    phone.type("#k-hand", "15");
    phone.untilSays("#live", "No connection");
    assertThat(placeOfTheKnobs()).isEqualTo(before);
  }

  private static Object placeOfTheKnobs() {
    return phone.script(
        "return ['#k-power', '#k-hand', '#count', 'input[value=char]', '#keep'].map(c =>"
            + " document.querySelector(c).getBoundingClientRect().top).join()");
  }
}
