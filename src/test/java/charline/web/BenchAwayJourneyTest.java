package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** While the bench is away or slow the page stays in the hand, and goes on when it is back. */
class BenchAwayJourneyTest extends BenchVisit {
  private static final String RECORD = "nav a[href='/record']";

  @Test
  void pages_come_in_place_and_back_leads_back() {
    browser.open(bench.address());
    browser.script("window.loadedOnce = true");
    browser.tap("nav a[href='/ask']");
    browser.untilSays("h1", "Ask the log");
    browser.tap("nav a[href='/window']");
    browser.untilSays("h1", "Windows");
    assertThat(browser.script("return location.pathname")).isEqualTo("/window");
    assertThat(browser.all("nav a[aria-current=page]"))
        .singleElement()
        .satisfies(a -> assertThat(a.getText()).isEqualTo("Window"));
    browser.driver().navigate().back();
    browser.untilSays("h1", "Ask the log");
    browser.type("#q", "clean latex");
    browser.tapText("Ask");
    browser.untilSays("#found", "patches on ");
    browser.tap(RECORD);
    browser.untilSays("#title", "Record a patch");
    assertThat(browser.script("return window.loadedOnce")).isEqualTo(true);
    assertThat(browser.complaints()).isEmpty();
  }

  @Test
  void without_the_bench_record_goes_on_and_what_cannot_be_had_says_so_in_place() {
    browser.open(bench.address());
    browser.tap("nav a[href='/ask']");
    browser.untilSays("h1", "Ask the log");
    browser.tap("nav a[href='/']");
    browser.untilSays("h1", "At the bench");
    awaitRecordReady();
    browser.connection(false);

    browser.tap(RECORD);
    browser.untilSays("#title", "Record a patch");
    browser.untilSays("#live", "No connection, so the risk is not known");
    browser.untilSays("#link", "No connection");
    browser.type("#k-power", "44");
    browser.type("#k-hand", "30");
    assertThat(keep(browser, "residue")).matches("W-[0-9A-Z]{4}");
    browser.untilSays("#link", "1 entry waiting, no connection");
    browser.tap("nav a[href='/ask']");
    browser.untilSays(".trouble", "This is what the page said at");
    browser.tap("nav a[href='/window']");
    browser.untilSays(".trouble", "It comes by itself when the bench is reached");
    browser.tap(RECORD);
    browser.untilSays("#title", "Kept on this device");
    browser.tap("#next");
    assertThat(value("#k-power")).isEqualTo("44");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#link", "2 entries waiting");
    browser.tap("nav a[href='/window']");
    browser.untilSays("h1", "Not here yet");

    browser.connection(true);
    browser.untilSays("h1", "Windows");
    browser.until("nothing waiting", () -> browser.text("#link").isEmpty() ? true : null);
    assertThat(recorded()).hasSize(2);
  }

  private static void awaitRecordReady() {
    browser.until(
        "Record on this device",
        () ->
            browser.module("visited.js", "m.visited('/record') ? true : null") == null
                ? null
                : browser.module("record.js", "true"));
  }

  @Test
  void a_form_that_cannot_be_sent_keeps_what_was_typed() {
    browser.open(bench.address() + "set-up");
    browser.tap("#form-board summary");
    browser.type("#form-board [name=name]", "sill offcut");
    browser.connection(false);
    browser.tap("#form-board button.main");
    browser.untilSays("#form-board .trouble", "What you typed is still here");
    assertThat(value("#form-board [name=name]")).isEqualTo("sill offcut");
    browser.connection(true);
    browser.tap("#form-board button.main");
    browser.untilSays("main", "sill offcut: pine");
  }

  @Test
  void the_last_known_risk_of_a_setting_is_shown_with_its_time() {
    browser.open(bench.address() + "record?like=LP-01&power=80&pace=30");
    browser.untilSays("#live", "Safe for the wood");
    browser.connection(false);
    browser.tap("[data-for=k-hand][data-step='1']");
    browser.untilSays("#live", "Fire nothing whose risk you have not seen before");
    assertThat(browser.find("#live").getAttribute("class")).contains("is-untried");
    browser.tap("[data-for=k-hand][data-step='-1']");
    browser.untilSays("#live", "Safe for the wood");
    assertThat(browser.text("#live-bounds")).startsWith("No connection. As of ");
    assertThat(browser.find("#live").getAttribute("class")).contains("old");
    browser.connection(true);
    browser.until(
        "the risk of now", () -> browser.text("#live").contains("No connection") ? null : true);
  }

  @Test
  void keep_is_seen_to_be_heard_at_once_and_waits_for_no_bench_that_is_away() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.tap("input[value=residue]");
    assertThat(
            browser.script(
                "window.fetch = () => new Promise(() => {}); const k ="
                    + " document.getElementById('keep'); k.click(); return [k.textContent,"
                    + " k.getAttribute('aria-busy'), k.disabled].join()"))
        .isEqualTo("Keeping,true,true");

    browser.fresh().size(390, 844);
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.connection(false);
    browser.type("#k-power", "35");
    browser.untilSays("#link", "No connection");
    browser.tap("input[value=residue]");
    Object waited =
        browser.asyncScript(
            "const done = arguments[0], began = performance.now();new MutationObserver(() => { if"
                + " (!kept.hidden) done(performance.now() - began); }).observe(kept, {attributes:"
                + " true}); keep.click();");
    assertThat(((Number) waited).doubleValue()).as("ms until the code is shown").isLessThan(1500);
    assertThat(browser.text("#kept-code")).matches("W-[0-9A-Z]{4}");
  }

  @Test
  void a_device_that_was_sent_away_is_told_to_pair_again() throws IOException {
    bench.close();
    bench = BenchHere.shared(file);
    String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
    String shared = "http://" + name + ":" + bench.port() + "/";
    try (Browser other = Browser.open(false, name).size(390, 844)) {
      other.open(shared + "record");
      other.type("[name=code]", bench.code());
      other.type("[name=name]", "anna phone");
      other.tap("button.main");
      other.untilSays("h1", "At the bench");
      other.open(shared + "record?like=LP-01");
      other.untilSays("#live", "at most");
      browser.open(bench.address() + "devices");
      browser.tapText("Revoke anna phone");
      browser.untilSays("main", "No device is paired.");
      other.tap("input[value=residue]");
      other.tap("#keep");
      other.untilSays("#kept-words", "It waits on this device until it is paired again.");
      other.untilSays("#link", "1 entry waits: pair again");
    }
  }

  @Test
  void a_photo_that_takes_long_holds_back_no_entry() throws IOException {
    File photo = picture(800, 600);
    browser.open(bench.address() + "record?like=LP-01");
    browser.script(
        "const real = window.fetch; window.fetch = (path, ...more) =>"
            + " String(path).startsWith('/photos') ? new Promise(() => {}) : real(path, ...more)");
    browser.unfold("seen-more");
    browser.find("#photo").sendKeys(photo.getPath());
    browser.until("the photo", () -> browser.find("#photo-shown").isDisplayed() ? true : null);
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#further");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-words", "clean after 2 passes");
    browser.untilSays("#title", "Kept in the log");
    assertThat(patch("P-0001").patch().readings()).hasSize(2);
    assertThat(photosOf("P-0001")).isZero();
    browser.untilSays("#link", "1 entry waiting");
  }

  @Test
  void a_large_photo_is_made_smaller_on_the_phone() throws IOException {
    File photo = picture(3000, 2200);
    browser.open(bench.address() + "record?like=LP-01");
    browser.unfold("seen-more");
    browser.find("#photo").sendKeys(photo.getPath());
    browser.until("the photo", () -> browser.find("#photo-shown").isDisplayed() ? true : null);
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.until("the photo in the log", () -> photosOf("P-0001") == 1 ? true : null);
    browser.open(bench.address() + "patch/P-0001");
    browser.until(
        "the picture",
        () ->
            (Boolean) browser.script("return document.querySelector('figure img').complete")
                ? true
                : null);
    assertThat(
            browser.script(
                "const i = document.querySelector('figure img'); return Math.max(i.naturalWidth,"
                    + " i.naturalHeight)"))
        .isEqualTo(2048L);
  }

  private File picture(int width, int height) throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    Random random = new Random(7);
    for (int i = 0; i < 4000; i++) {
      g.setColor(new Color(random.nextInt(0x1000000)));
      g.fillRect(random.nextInt(width), random.nextInt(height), 60, 60);
    }
    g.dispose();
    File file = folder.resolve("patch-" + width + ".jpg").toFile();
    ImageIO.write(image, "jpg", file);
    return file;
  }

  @Test
  void without_scripts_record_says_what_it_needs_and_keeps_nothing() {
    browser.scripts(false);
    try {
      browser.open(bench.address() + "record");
      assertThat(browser.text("noscript, main")).contains("needs JavaScript");
      assertThat(browser.find("#keep").isEnabled()).isFalse();
      browser.open(bench.address());
      browser.tap("nav a[href='/ask']");
      browser.untilSays("h1", "Ask the log");
    } finally {
      browser.scripts(true);
    }
  }

  @Test
  void the_keyboard_goes_on_where_the_next_patch_begins() {
    browser.open(bench.address() + "record?like=LP-01");
    keep(browser, "residue");
    browser.until(
        "the buttons to listen",
        () ->
            browser.script("return document.getElementById('kept-actions').inert").equals(false)
                ? true
                : null);
    browser.script("document.getElementById('next').focus()");
    browser.press("\n");
    assertThat(browser.script("return document.activeElement.id")).isEqualTo("title");
    browser.script("document.querySelector(\"nav a[href='/ask']\").focus()");
    browser.press("\n");
    browser.untilSays("h1", "Ask the log");
    assertThat(browser.script("return document.activeElement.id")).isEqualTo("main");
    assertThat(List.of(browser.script("return document.title"))).contains("Ask - charline bench");
  }
}
