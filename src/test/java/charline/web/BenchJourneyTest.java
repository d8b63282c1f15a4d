package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.trial.Patch;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** Whole visits: an empty log set up, another device, the log asked, a window and its sheet. */
class BenchJourneyTest extends TabletVisit {
  @Test
  void everything_is_set_up_without_a_manual_in_an_empty_log() throws IOException {
    file = folder.resolve("new.db");
    serveWithTheJar();
    browser.open(bench.address() + "record");
    browser.untilSays("main", "set up a rig and a board and a finish first");
    browser.tapText("Set up");
    browser.tap("#form-rig summary");
    browser.type("#form-rig [name=name]", "heron");
    browser.type("#form-rig [name=rated]", "30000");
    browser.type("#form-rig [name=spot]", "0.5");
    browser.type("#form-rig [name=rep]", "60");
    browser.type("#form-rig [name=width]", "60");
    browser.tap("#form-rig button.main");
    browser.untilSays(
        "#form-rig .trouble", "Power of a pulsed unit of 30000 W is outside 5 to 2000 W");
    assertThat(browser.find("#form-rig [name=name]").getAttribute("value")).isEqualTo("heron");
    browser.type("#form-rig [name=rated]", "300");
    browser.tap("#form-rig button.main");
    browser.untilSays(".card", "pulsed, 300 W rated, 1064 nm, spot 0.5 mm");
    browser.tap("#form-check summary");
    browser.type("#form-check [name=percent]", "80");
    browser.type("#form-check [name=metered]", "231");
    browser.tap("#form-check button.main");
    browser.untilSays(".card", "231 W metered at 80 %");
    browser.tap("#form-board summary");
    browser.type("#form-board [name=name]", "sill offcut");
    browser.tap("#form-board button.main");
    browser.untilSays("main", "sill offcut: pine, solid");
    browser.tap("#form-finish summary");
    browser.type("#form-finish [name=name]", "sill latex");
    browser.type("[name=coat1]", "latex");
    browser.type("#form-finish [name=thickness1]", "90");
    browser.tap("#form-finish button.main");
    browser.untilSays("main", "sill latex: samples and cautions, put right, counted as latex");
    browser.open(bench.address() + "record");
    browser.type("#k-power", "30");
    browser.type("#k-hand", "40");
    browser.untilSays("#live", "No patch of latex on pine");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
  }

  @Test
  void a_second_device_is_paired_with_the_code_and_an_unpaired_one_is_refused() throws IOException {
    serveWithTheJar("--share");
    String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
    String shared = "http://" + name + ":" + bench.port() + "/";
    browser.open(bench.address() + "devices");
    assertThat(browser.text(".code"))
        .isEqualTo(bench.code().substring(0, 4) + " " + bench.code().substring(4));
    try (Browser phone = Browser.open(false, name).size(360, 740)) {
      phone.open(shared + "record");
      assertThat(phone.text("h1")).isEqualTo("Pair this device");
      phone.type("[name=code]", "00000000");
      phone.type("[name=name]", "phone at the <b>bench</b>");
      phone.tap("button.main");
      phone.untilSays(".trouble", "yours is different");
      phone.type("[name=code]", bench.code().substring(0, 4) + " " + bench.code().substring(4));
      phone.type("[name=name]", "phone at the <b>bench</b>");
      phone.tap("button.main");
      phone.untilSays("h1", "At the bench");
      phone.open(shared + "record?like=LP-01");
      phone.tap("input[value=clean]");
      phone.tap("#keep");
      phone.untilSays("#kept-code", "P-0001");
      phone.open(shared + "devices");
      phone.untilSays(".trouble", "Devices are managed on the serving machine only.");

      browser.open(bench.address() + "devices");
      assertThat(browser.text(".card h3")).isEqualTo("phone at the <b>bench</b>");
      browser.tap(".card form[action='/devices/revoke'] button");
      browser.untilSays("main", "No device is paired.");
      phone.open(shared + "record");
      assertThat(phone.text("h1")).isEqualTo("Pair this device");
    }
  }

  @Test
  void the_log_is_asked_in_plain_words_and_a_result_is_used_again() {
    browser.open(bench.address() + "ask");
    browser.type("#q", "clean latex over pine");
    browser.find("#q").sendKeys(Keys.ENTER);
    browser.untilSays("#found", "patches on ");
    browser.untilSays("main", "You ask for patches of latex, on pine");
    assertThat(browser.all("table.patches tbody tr"))
        .isNotEmpty()
        .allSatisfy(row -> assertThat(row.getText()).contains("clean"));
    browser.type("#q", "clear latxe");
    browser.find("#q").sendKeys(Keys.ENTER);
    browser.untilSays(".trouble", "latex");
    browser.open(bench.address() + "ask?q=clean%20latex");
    String code = browser.text("table.patches tbody th a");
    Patch found = patch(code).patch();
    browser.tap("table.patches tbody th a");
    browser.untilSays("h1", code);
    browser.tapText("Use these settings again");
    browser.untilSays("#live", "at most");
    assertThat(Double.parseDouble(browser.find("#k-power").getAttribute("value")))
        .isEqualTo(found.settings().power().value());
  }

  @Test
  void a_window_is_seen_its_map_tapped_and_its_sheet_printed() throws Exception {
    browser.open(bench.address() + "window");
    browser.until(
        "all verdicts",
        () -> {
          browser.open(bench.address() + "window");
          return browser.text("main").contains("being computed") ? null : true;
        });
    browser.tapText("latex on pine");
    browser.untilSays(".verdict", "WINDOW");
    browser.untilSays("#live", "at most");
    String atStart = browser.text("#live");
    WebElement plot = browser.find("svg.draw rect.line");
    new Actions(browser.driver()).moveToElement(plot, -60, -20).click().perform();
    browser.until("another place", () -> browser.text("#live").equals(atStart) ? null : true);
    assertThat(browser.find("#m-power").getAttribute("value")).isNotBlank();
    browser.tap("#to-sheet");
    browser.untilSays("h1", "Sheet for the bench");
    String sheet = browser.find("a[href*='print=yes']").getAttribute("href");
    browser.open(sheet);
    assertThat(browser.text("h1")).isEqualTo("latex on pine");
    assertThat(
            browser.script(
                "return getComputedStyle(document.querySelector('.start')).borderTopStyle"))
        .isEqualTo("solid");
    browser.until("the sheet to print itself", () -> browser.printed() == 1 ? true : null);
    assertThat(browser.complaints()).isEmpty();
    Path pdf = folder.resolve("sheet.pdf");
    browser.print(pdf);
    assertThat(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1))
        .startsWith("%PDF")
        .containsOnlyOnce("/Type /Page\n");
    browser.open(bench.address() + "sheet?family=latex&wood=pine"); // to be looked at
    assertThat(browser.text("h1")).isEqualTo("latex on pine");
    assertThat(browser.all("script")).isEmpty();
    browser.open(bench.address() + "window?family=latex&wood=pine");
    browser.tapText("Record with this start");
    browser.untilSays("#live", "Safe for the wood");
  }
}
